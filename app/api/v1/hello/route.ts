import { routeOf } from '@/app/api/route-of';

/** An answer that touches nothing: what the others are measured beside. */
export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = routeOf({
  GET: async () => Response.json({ hello: 'Fitwright' }),
});
