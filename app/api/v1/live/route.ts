import { routeOf } from '@/app/api/route-of';
import { problem } from '@/lib/http/problem';
import { eventStream } from '@/lib/http/event-stream';
import { LiveQuery } from '@/lib/http/live-query';
import { followChanges } from '@/lib/store/follow-changes';

/** The change log as it grows, as server-sent events; the id of an event is its number in the log. */
export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = routeOf({
  async GET({ request, query }) {
    const asked = LiveQuery.safeParse({
      job: query.get('job') ?? undefined,
      after: request.headers.get('last-event-id') ?? query.get('after') ?? undefined,
    });
    if (!asked.success) {
      const errors = asked.error.issues.map(({ path, message: says }) => ({
        at: path.join('.'),
        says,
      }));
      return problem('wrong-shape', { errors });
    }
    const { job, after } = asked.data;
    return eventStream(request, (send) => followChanges({ jobId: job, after }, send));
  },
});
