import { z } from 'zod';
import { Instant, LongText, Name, ShortText, thing, Unit } from './common';

/** An assembly or a batch to be made. */
export const job = thing({
  fixed: {},
  fields: {
    name: Name,
    note: LongText,
    drawing: ShortText,
    revision: ShortText,
    unit: Unit.describe('The unit this job is shown in and typed in'),
    finishedAt: Instant.nullable(),
  },
  made: { number: z.int().min(1).describe('The running number of the job, shown as 014') },
});
export type Job = z.infer<typeof job.Row>;
export type NewJob = z.infer<typeof job.New>;
