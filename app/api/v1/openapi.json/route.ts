import { routeOf } from '@/app/api/route-of';
import { openApi } from '@/lib/http/open-api';

/** The description of this API, made from the schemas that judge its requests. */
export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = routeOf({
  GET: async () => Response.json(openApi()),
});
