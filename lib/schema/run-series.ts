import { z } from 'zod';
import { feature } from './feature';
import { run, runEvent } from './run';

/** A run drawn closely: every measured piece in the order made, and what the chart needs beside. */
export const RunSeriesAnswer = z.object({
  seq: z.int().describe('The change-log number it is true at'),
  ordinals: z
    .array(z.int())
    .describe('The measured pieces, in the order made; of several features alike the turns'),
  sizesPm: z
    .array(z.int())
    .describe('Their sizes, one for each; of several features alike each from its own nominal'),
  marks: z
    .array(z.string())
    .nullable()
    .describe('Of several features alike, how each turn is named; null where the ordinal says it'),
});
export type RunSeriesAnswer = z.infer<typeof RunSeriesAnswer>;

/** What a run is of; small, whatever its length. */
export const RunHead = z.object({
  run: run.Row,
  feature: feature.Row,
  features: z.array(feature.Row).describe('All its features, that one first'),
  turns: z.int().describe('Turns of the whole batch; the pieces where it has one feature'),
  events: z.array(runEvent.Row),
  part: z.object({ name: z.string(), prefix: z.string(), quantity: z.int() }),
  job: z.object({ id: z.string(), name: z.string(), unit: z.enum(['mm', 'in']) }),
});
export type RunHead = z.infer<typeof RunHead>;
