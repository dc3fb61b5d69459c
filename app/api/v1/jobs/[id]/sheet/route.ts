import { routeOf } from '@/app/api/route-of';
import { problem } from '@/lib/http/problem';
import { Id } from '@/lib/schema/common';
import { jobSheet } from '@/lib/store/job-sheet';

/** Everything the sheets of one job are drawn from, at one moment. */
export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = routeOf({
  async GET({ params }) {
    const id = Id.safeParse(params['id']);
    const sheet = id.success ? await jobSheet(id.data) : null;
    return sheet === null ? problem('no-such-thing') : Response.json(sheet);
  },
});
