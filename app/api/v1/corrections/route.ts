import { routeOf } from '@/app/api/route-of';
import { receive } from '@/lib/http/receive';
import { Batch } from '@/lib/schema/reading';
import { keepCorrections } from '@/lib/store/readings';

/** Keeps corrections sent by a device's outbox; one may come before the reading it names. */
export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = routeOf({
  POST: receive(Batch, async (batch) => Response.json({ outcomes: await keepCorrections(batch) }), {
    eachOnItsOwn: true,
  }),
});
