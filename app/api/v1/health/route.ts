import { routeOf } from '@/app/api/route-of';
import { health } from '@/lib/store/health';

/** Whether the database answers. */
export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = routeOf({
  GET: async () => Response.json({ state: 'ok', ...(await health()) }),
});
