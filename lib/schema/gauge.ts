import { z } from 'zod';
import { gaugeKinds } from './gauge-kinds';
import { DecimalMark, LengthPm, LongText, Name, PositivePm, thing, Unit } from './common';
import { serialFrames } from './serial-frames';

export const GaugeKind = z.enum(gaugeKinds);
export type GaugeKind = z.infer<typeof GaugeKind>;

/** How the messages of a gauge end: a key it presses, a character it writes, or nothing. */
export const MessageEnd = z.enum(['enter', 'tab', 'comma', 'space', 'nothing']);
export type MessageEnd = z.infer<typeof MessageEnd>;

/** What a figure from a gauge without a unit beside it is in. */
export const UnitRule = z.enum(['mm', 'in', 'says', 'button']);
export type UnitRule = z.infer<typeof UnitRule>;

/** How a gauge sends its readings, as it was taught by example; each is null where nobody has shown it. */
const sends = {
  sendsEnd: MessageEnd.nullable().describe('How its message ends; null where it was never taught'),
  sendsMark: DecimalMark.nullable().describe('The decimal mark it writes; never one that ends it'),
  sendsUnit: UnitRule.nullable().describe(
    'Always mm, always inches, written beside the figure, or as its own button stands',
  ),
  sendsPlaces: z
    .int()
    .min(0)
    .max(9)
    .nullable()
    .describe('The fewest decimals it was seen to write'),
  sendsPlus: z.boolean().describe('It writes a + before a size; no departure is meant by it'),
  sendsPrefix: z
    .string()
    .max(12)
    .nullable()
    .describe('What stands before its figures and says nothing'),
  sendsPauseMs: z
    .int()
    .min(50)
    .max(500)
    .nullable()
    .describe(
      'Where nothing ends it: so long without a key, after a whole number, and it has ended',
    ),
  serialBaud: z.int().min(75).max(4_000_000).nullable().describe('The speed of its serial line'),
  serialFrame: z
    .enum(serialFrames)
    .nullable()
    .describe('Data bits, parity and stop bits of its line'),
};

/** Any measuring instrument. */
const shapes = thing({
  fixed: {},
  fields: {
    name: Name,
    kind: GaugeKind,
    unit: Unit.describe('The unit it reads in'),
    resolutionPm: PositivePm.describe('The smallest step it shows'),
    uncertaintyPm: LengthPm.min(0)
      .nullable()
      .describe('Expanded uncertainty (k = 2) its maker or its check states; null is not known'),
    rangeLowPm: LengthPm.min(0).nullable(),
    rangeHighPm: LengthPm.min(0).nullable(),
    checkedOn: z.iso.date().nullable().describe('The day it was last checked'),
    note: LongText,
    ...sends,
  },
  made: {},
});
/** A new one need not say how it sends: that is taught with the gauge in hand. */
export const gauge = {
  ...shapes,
  New: shapes.New.partial({
    sendsEnd: true,
    sendsMark: true,
    sendsUnit: true,
    sendsPlaces: true,
    sendsPlus: true,
    sendsPrefix: true,
    sendsPauseMs: true,
    serialBaud: true,
    serialFrame: true,
  }),
};
export type GaugeSends = Pick<Gauge, keyof typeof sends>;
export type Gauge = z.infer<typeof gauge.Row>;

/** Somebody who measures. Names only. */
export const person = thing({ fixed: {}, fields: { name: Name }, made: {} });
export type Person = z.infer<typeof person.Row>;
