import { routeOf } from '@/app/api/route-of';
import { refusal } from '@/lib/http/problem';
import { receive } from '@/lib/http/receive';
import { whoOf } from '@/lib/http/who-of';
import { JobStart } from '@/lib/schema/new-job';
import { startJob } from '@/lib/store/start-job';

/** Starts a whole job: all of it is kept, or none. Safe to repeat. */
export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = routeOf({
  POST: receive(JobStart, async (start, { request }) => {
    const who = whoOf(request);
    if (who instanceof Response) return who;
    const started = await startJob(start, who);
    if (started.state === 'refused') return refusal(started);
    const { state, jobId } = started;
    return Response.json({ jobId }, { status: state === 'made' ? 201 : 200 });
  }),
});
