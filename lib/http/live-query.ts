import { z } from 'zod';
import { Id } from '@/lib/schema/common';

/** What the live feed is asked for. `Last-Event-ID`, which a browser sends by itself, stands for `after`. */
export const LiveQuery = z.object({
  job: Id.optional().describe(
    'Only this job, and what belongs to no job; all jobs where it is left out',
  ),
  after: z.coerce
    .number()
    .pipe(z.int().min(0))
    .optional()
    .describe(
      'The last number already known; the changes after it come first. Only new ones if left out',
    ),
});
