import { problem, refusal } from '@/lib/http/problem';
import { receive } from '@/lib/http/receive';
import { whoOf } from '@/lib/http/who-of';
import type { ThingKind } from '@/lib/schema/change';
import { SettingId } from '@/lib/schema/setting';
import { things } from '@/lib/schema/things';
import { changeThing } from '@/lib/store/change-thing';
import { findThings } from '@/lib/store/find-things';
import type { Change } from '@/lib/store/thing-types';
import { routeOf } from './route-of';

/** The address of one thing: GET shows it, PATCH changes it, strikes it out or puts it back. */
export function thingRoute<Kind extends ThingKind>(kind: Kind) {
  return routeOf({
    async GET({ params }) {
      const [row] = isId(params['id']) ? await findThings(kind, { id: params['id'] }) : [];
      return row === undefined ? problem('no-such-thing') : Response.json(row);
    },

    PATCH: receive(things[kind].Change, async (change, { request, params }) => {
      const who = whoOf(request);
      if (who instanceof Response) return who;
      if (!isId(params['id'])) return problem('no-such-thing');
      const changed = await changeThing(kind, params['id'], change as Change<Kind>, who);
      switch (changed.state) {
        case 'unknown':
          return problem('no-such-thing');
        case 'refused':
          return refusal(changed);
        case 'stale':
          return problem('stale', { yours: changed.yours, current: changed.current });
        default:
          return Response.json(changed.row, {
            headers: changed.says === null ? {} : { 'fitwright-says': changed.says },
          });
      }
    }),
  });
}

function isId(id: unknown): id is string {
  return SettingId.safeParse(id).success;
}
