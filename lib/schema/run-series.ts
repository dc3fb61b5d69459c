import { z } from 'zod';
import { feature } from './feature';
import { run, runEvent } from './run';

/** A run drawn closely: every measured piece in the order made, and what the chart needs beside. */
export const RunSeriesAnswer = z.object({
  seq: z.int().describe('The change-log number it is true at'),
  ordinals: z.array(z.int()).describe('The measured pieces, in the order made'),
  sizesPm: z.array(z.int()).describe('Their sizes, one for each'),
});
export type RunSeriesAnswer = z.infer<typeof RunSeriesAnswer>;

/** What a run is of; small, whatever its length. */
export const RunHead = z.object({
  run: run.Row,
  feature: feature.Row,
  events: z.array(runEvent.Row),
  part: z.object({ name: z.string(), prefix: z.string(), quantity: z.int() }),
  job: z.object({ id: z.string(), name: z.string(), unit: z.enum(['mm', 'in']) }),
});
export type RunHead = z.infer<typeof RunHead>;
