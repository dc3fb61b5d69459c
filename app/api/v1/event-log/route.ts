import { routeOf } from '@/app/api/route-of';
import { receive } from '@/lib/http/receive';
import { Batch } from '@/lib/schema/reading';
import { keepRunEvents } from '@/lib/store/keep-run-events';

/** Keeps events of runs sent by a device's outbox. A refused one stays on the device for a person to put right. */
export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = routeOf({
  POST: receive(Batch, async (batch) => Response.json({ outcomes: await keepRunEvents(batch) }), {
    eachOnItsOwn: true,
  }),
});
