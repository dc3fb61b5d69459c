import { routeOf } from '@/app/api/route-of';
import { problem } from '@/lib/http/problem';
import { Id } from '@/lib/schema/common';
import { deviceHeld } from '@/lib/store/device-held';

/** What the book has of one device, for the device to find what was lost on the way. */
export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = routeOf({
  async GET({ params }) {
    const id = Id.safeParse(params['id']);
    return id.success ? Response.json(await deviceHeld(id.data)) : problem('no-such-thing');
  },
});
