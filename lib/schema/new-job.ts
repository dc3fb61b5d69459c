import { z } from 'zod';
import { Id } from './common';
import { feature } from './feature';
import { fit } from './fit';
import { job } from './job';
import { part } from './part';
import { run } from './run';

const inJob = { jobId: true } as const;

/**
 * A whole job as a drawing gives it, started in one request: all of it is kept or none. Pieces are marked
 * by the server, prefix and number, from each part's quantity.
 */
export const JobStart = z.strictObject({
  job: job.New,
  parts: z.array(part.New.omit(inJob)).min(1).max(60),
  features: z.array(feature.New.omit(inJob)).max(400),
  fits: z.array(fit.New.omit(inJob)).max(100),
  runs: z.array(run.New.omit(inJob)).max(100),
});
export type JobStart = z.infer<typeof JobStart>;

export const JobStarted = z.object({ jobId: Id });
