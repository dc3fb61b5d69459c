import { z } from 'zod';
import { chartSettings, type ChartSetting } from './chart-settings';
import { Id, Instant, LengthPm, PositivePm, ShortText, thing } from './common';
import { notedAt } from './noted-at';

/** What a control chart plots, or `none` where only the run chart is wanted. */
export const ControlKind = z.enum([
  'none',
  'single pieces',
  'mean and range',
  'mean and s',
  'ewma',
  'cusum',
]);
export type ControlKind = z.infer<typeof ControlKind>;

/** The pattern rules of a control chart (ISO 7870-2; Nelson 1984), each a switch. */
export const PatternRule = z.enum([
  'beyond three sigma',
  'nine on one side',
  'six rising or falling',
  'fourteen alternating',
  'two of three beyond two sigma',
  'four of five beyond one sigma',
  'fifteen within one sigma',
  'eight beyond one sigma',
]);
export type PatternRule = z.infer<typeof PatternRule>;

/** A turn of the run, counted from 1. */
const Turn = z.int().min(1).max(1_000_000);

function Milli(setting: ChartSetting) {
  const { least, most } = chartSettings[setting];
  return z.int().min(least).max(most);
}

/** Pieces made one after another to the same feature, or to several alike. */
export const run = thing({
  fixed: {
    jobId: Id,
    featureId: Id,
    alikeIds: z
      .array(Id)
      .max(11)
      .refine((ids) => new Set(ids).size === ids.length, 'one of them stands twice')
      .describe(
        'Further features made the same way: each is charted as its departure from its own nominal',
      ),
  },
  fields: {
    dial: z.enum(['radius', 'diameter']).describe('What one division of the slide moves'),
    divisionPm: PositivePm.describe('One division of that dial'),
    zones: z
      .boolean()
      .describe('A short batch set up and run by zones: the middle half of the limits decides'),
    control: ControlKind.describe('The control chart under the run chart'),
    together: z.int().min(1).max(25).describe('How many are taken at a time; 1 is single pieces'),
    groupOf: z
      .enum(['pieces', 'readings'])
      .describe('What a group is: pieces in a row, or the readings of one piece'),
    baseFrom: Turn.nullable().describe(
      'The limits are worked out from this turn on; null: the first',
    ),
    baseTo: Turn.nullable().describe(
      'The limits are worked out up to this turn; null: the last one made',
    ),
    follow: z.enum(['flat', 'line']).describe('Flat limits, or limits that follow the drift line'),
    patterns: z
      .array(PatternRule)
      .max(8)
      .refine((rules) => new Set(rules).size === rules.length, 'one of them stands twice')
      .describe('The pattern rules that are switched on'),
    averageWeightMilli: Milli('averageWeightMilli').describe(
      'EWMA: weight of the newest value, in thousandths',
    ),
    averageWidthMilli: Milli('averageWidthMilli').describe(
      'EWMA: half-width of the limits, in thousandths of a standard deviation of the average',
    ),
    sumReferenceMilli: Milli('sumReferenceMilli').describe(
      'CUSUM: the reference value, in thousandths of a standard deviation of what is summed',
    ),
    sumDecisionMilli: Milli('sumDecisionMilli').describe(
      'CUSUM: the decision interval, in thousandths of the same',
    ),
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

/** What is said of an event. */
export const eventSaid = {
  afterOrdinal: z
    .int()
    .min(0)
    .max(1_000_000)
    .describe(
      'It came after this turn of the run (the ordinal of the piece where the run has one feature); 0 is before the first',
    ),
  kind: RunEventKind,
  note: ShortText,
  offsetPm: LengthPm.nullable().describe(
    'For an offset: how far, on diameter; negative is smaller',
  ),
  offsetDial: z
    .enum(['radius', 'diameter'])
    .nullable()
    .describe('The dial it was put in on; null where nobody said'),
};

/** Something that happened between two pieces of a run. */
export const runEvent = thing({
  fixed: { jobId: Id, runId: Id },
  fields: { ...eventSaid, at: Instant },
  made: notedAt,
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
