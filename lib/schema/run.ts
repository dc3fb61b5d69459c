import { z } from 'zod';
import { Id, Instant, LengthPm, PositivePm, ShortText, thing } from './common';

/** Pieces made one after another to the same feature. */
export const run = thing({
  fixed: { jobId: Id, featureId: Id },
  fields: {
    dial: z.enum(['radius', 'diameter']).describe('What one division of the slide moves'),
    divisionPm: PositivePm.describe('One division of that dial'),
    zones: z
      .boolean()
      .describe('A short batch set up and run by zones: the middle half of the limits decides'),
  },
  made: {},
});
export type Run = z.infer<typeof run.Row>;

export const RunEventKind = z.enum([
  'insert changed',
  'offset moved',
  'coolant',
  'warm-up',
  'break',
  're-chucked',
  'other',
]);
export type RunEventKind = z.infer<typeof RunEventKind>;

/** Something that happened between two pieces of a run. */
export const runEvent = thing({
  fixed: { jobId: Id, runId: Id },
  fields: {
    afterOrdinal: z
      .int()
      .min(0)
      .max(100_000)
      .describe('It came after this piece; 0 is before the first'),
    kind: RunEventKind,
    note: ShortText,
    offsetPm: LengthPm.nullable().describe(
      'For an offset: how far, on diameter; negative is smaller',
    ),
    at: Instant,
  },
  made: {},
});
export type RunEvent = z.infer<typeof runEvent.Row>;

/** A decision to make something other than drawn. */
export const departure = thing({
  fixed: { jobId: Id },
  fields: {
    number: z.int().min(1).max(999),
    partId: Id.nullable(),
    made: ShortText.min(1),
    drawn: ShortText.min(1),
    why: ShortText,
    touches: ShortText,
  },
  made: {},
});
export type Departure = z.infer<typeof departure.Row>;
