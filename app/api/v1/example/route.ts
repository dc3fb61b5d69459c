import { z } from 'zod';
import { routeOf } from '@/app/api/route-of';
import { receive } from '@/lib/http/receive';
import { loadExample } from '@/seed/load-example';

/** Loads the example job. Safe to repeat: it is in the notebook once, as a person may since have changed it. */
export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = routeOf({
  POST: receive(z.strictObject({}), async () => Response.json(await loadExample())),
});
