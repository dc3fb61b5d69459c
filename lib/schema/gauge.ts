import { z } from 'zod';
import { gaugeKinds } from './gauge-kinds';
import { LengthPm, LongText, Name, PositivePm, thing, Unit } from './common';

export const GaugeKind = z.enum(gaugeKinds);
export type GaugeKind = z.infer<typeof GaugeKind>;

/** Any measuring instrument. */
export const gauge = thing({
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
  },
  made: {},
});
export type Gauge = z.infer<typeof gauge.Row>;

/** Somebody who measures. Names only. */
export const person = thing({ fixed: {}, fields: { name: Name }, made: {} });
export type Person = z.infer<typeof person.Row>;
