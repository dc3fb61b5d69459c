import { kindNames } from '@/lib/http/kind-names';
import { problem, refusal } from '@/lib/http/problem';
import { receive } from '@/lib/http/receive';
import { whoOf } from '@/lib/http/who-of';
import type { ThingKind } from '@/lib/schema/change';
import { Id } from '@/lib/schema/common';
import { things } from '@/lib/schema/things';
import { findThings } from '@/lib/store/find-things';
import { makeThing } from '@/lib/store/make-thing';
import type { New } from '@/lib/store/thing-types';
import { routeOf } from './route-of';

/** A picture travels as base64 inside JSON, a third larger than its file. */
const pictureBodyBytesMax = 12_000_000;

/** The address of all things of one kind: GET lists them, those of ?job= where a job has them; POST makes one. */
export function thingsRoute<Kind extends ThingKind>(kind: Kind) {
  const hasJob = 'jobId' in things[kind].Row.shape;
  return routeOf({
    async GET({ query }) {
      const job = query.get('job');
      if (!hasJob) return Response.json({ rows: await findThings(kind) });
      const jobId = Id.safeParse(job);
      return jobId.success
        ? Response.json({ rows: await findThings(kind, { jobId: jobId.data }) })
        : problem('wrong-shape', {
            errors: [{ at: 'job', says: 'Name the job: ?job= and its id' }],
          });
    },

    POST: receive(
      things[kind].New,
      async (fresh, { request }) => {
        const who = whoOf(request);
        if (who instanceof Response) return who;
        const made = await makeThing(kind, fresh as New<Kind>, who);
        if (made.state === 'refused') return refusal(made);
        const location = `/api/v1/${kindNames[kind]}/${made.row.id}`;
        return Response.json(made.row, {
          status: made.state === 'made' ? 201 : 200,
          headers: { location },
        });
      },
      kind === 'picture' ? { bytesMax: pictureBodyBytesMax } : {},
    ),
  });
}
