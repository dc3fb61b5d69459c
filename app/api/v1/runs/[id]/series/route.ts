import { routeOf } from '@/app/api/route-of';
import { problem } from '@/lib/http/problem';
import { Id } from '@/lib/schema/common';
import { findRunSeries } from '@/lib/store/run-series';

/** Every measured piece of a run with its size, as two columns: a run of any length in one small answer. */
export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = routeOf({
  async GET({ params }) {
    const id = Id.safeParse(params['id']);
    const series = id.success ? await findRunSeries(id.data) : null;
    return series === null ? problem('no-such-thing') : Response.json(series);
  },
});
