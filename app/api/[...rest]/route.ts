import { routeOf } from '@/app/api/route-of';
import { problem } from '@/lib/http/problem';

const none = async () => problem('no-such-address');

/** Every address below /api that there is not. */
export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = routeOf({
  GET: none,
  POST: none,
  PUT: none,
  PATCH: none,
  DELETE: none,
});
