import { routeOf } from '@/app/api/route-of';
import { receive } from '@/lib/http/receive';
import { Batch } from '@/lib/schema/reading';
import { keepStrikes } from '@/lib/store/keep-strikes';

/** Strikes out, or puts back, cuts and events as a device's outbox says. A refused one stays on the device. */
export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = routeOf({
  POST: receive(Batch, async (batch) => Response.json({ outcomes: await keepStrikes(batch) }), {
    eachOnItsOwn: true,
  }),
});
