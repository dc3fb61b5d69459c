import { z } from 'zod';
import { featureKinds } from './feature-kinds';
import { Id, LengthPm, Name, PositivePm, ShortText, thing, Unit } from './common';

export const FeatureKind = z.enum(featureKinds);
export type FeatureKind = z.infer<typeof FeatureKind>;

/** The names of stations or directions: at least one, no two alike. */
const Labels = z
  .array(z.string().trim().min(1).max(24))
  .min(1)
  .max(12)
  .refine((labels) => new Set(labels).size === labels.length, 'two of them have the same name');

/** A measurable characteristic of a part, as the drawing gives it. */
export const feature = thing({
  fixed: { jobId: Id, partId: Id },
  fields: {
    position: z.int().min(0).max(10_000),
    balloon: z.string().trim().max(6).describe('The number beside it on the marked-up drawing'),
    name: Name,
    kind: FeatureKind,
    asDrawn: ShortText.describe('As it was typed from the drawing: 18.000 +0.018 0'),
    unit: Unit.describe('The unit the drawing gives it in'),
    nominalPm: PositivePm,
    upperPm: LengthPm.nullable().describe('Upper deviation; null where the drawing leaves it open'),
    lowerPm: LengthPm.nullable().describe('Lower deviation; null where the drawing leaves it open'),
    isoClass: z
      .string()
      .regex(/^[A-Za-z]{1,2}\d{1,2}$/)
      .nullable()
      .describe('H7, g6: where the deviations came from'),
    stations: Labels,
    directions: Labels,
    pictureId: Id.nullable(),
    pictureX: z.number().min(0).max(1).nullable().describe('Balloon, share of the width'),
    pictureY: z.number().min(0).max(1).nullable().describe('Balloon, share of the height'),
  },
  made: {},
});
export type Feature = z.infer<typeof feature.Row>;
