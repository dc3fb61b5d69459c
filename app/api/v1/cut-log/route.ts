import { routeOf } from '@/app/api/route-of';
import { receive } from '@/lib/http/receive';
import { Batch } from '@/lib/schema/reading';
import { keepCuts } from '@/lib/store/keep-cuts';

/** Keeps cuts sent by a device's outbox. A refused one stays on the device for a person to put right. */
export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = routeOf({
  POST: receive(Batch, async (batch) => Response.json({ outcomes: await keepCuts(batch) }), {
    eachOnItsOwn: true,
  }),
});
