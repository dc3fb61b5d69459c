import { z } from 'zod';
import { Id, Instant, LengthPm, PositivePm, Unit } from './common';

/** The most entries one request may bring. */
export const batchMax = 100;

export const SlipKind = z.enum([
  'thimble turn',
  'needle turn',
  'sleeve line',
  'wrong frame',
  'other unit',
  'decimal point',
  'swapped figures',
  'one figure',
  'half or double',
  'wrong feature',
  'far off',
]);
export type SlipKind = z.infer<typeof SlipKind>;

/** The text of one entry exactly as it was typed or as the gauge sent it; never rewritten, not even trimmed. */
const TypedText = z.string().min(1).max(64);

const sent = {
  id: Id,
  deviceTime: Instant.describe('When the device kept it, by its own clock'),
  deviceSeq: z
    .int()
    .min(1)
    .describe('The running number of this entry on its device, without gaps'),
  personId: Id.nullable(),
};
const observed = {
  text: TypedText,
  unit: Unit,
  valuePm: LengthPm,
  resolutionPm: PositivePm,
};
const kept = {
  seq: z.int().min(1),
  jobId: Id,
  receivedAt: Instant,
  deviceId: Id,
};

/** One observation, as a device sends it. */
export const NewReading = z.strictObject({
  ...sent,
  ...observed,
  pieceId: Id,
  featureId: Id,
  gaugeId: Id,
  station: z.string().max(24),
  direction: z.string().max(24),
  temperatureMilliC: z.int().min(-100_000).max(1_000_000).nullable(),
  heldAs: SlipKind.nullable().describe(
    'The slip it was suspected of; it does not count until said to',
  ),
});
export type NewReading = z.infer<typeof NewReading>;

/** One observation, as it is in the book. */
export const Reading = z.object({ ...NewReading.shape, ...kept });
export type Reading = z.infer<typeof Reading>;

/**
 * A row that names a reading. `void` strikes it out, `restore` puts it back, `count` says a held one is
 * right, `mistyped` says what it should have read, `move` says where it belongs.
 */
export const NewCorrection = z
  .strictObject({
    ...sent,
    readingId: Id,
    kind: z.enum(['void', 'restore', 'count', 'mistyped', 'move']),
    reason: z.string().trim().max(200),
    toPieceId: Id.nullable(),
    toFeatureId: Id.nullable(),
    toStation: z.string().max(24).nullable(),
    toDirection: z.string().max(24).nullable(),
    text: TypedText.nullable(),
    unit: Unit.nullable(),
    valuePm: LengthPm.nullable(),
    resolutionPm: PositivePm.nullable(),
  })
  .superRefine((row, context) => {
    const need = (
      field: 'valuePm' | 'text' | 'unit' | 'resolutionPm' | 'toPieceId' | 'toFeatureId',
    ) => {
      if (row[field] === null) {
        context.addIssue({
          code: 'custom',
          path: [field],
          message: `a ${row.kind} correction needs it`,
        });
      }
    };
    if (row.kind === 'mistyped')
      (['text', 'unit', 'valuePm', 'resolutionPm'] as const).forEach(need);
    if (row.kind === 'move') (['toPieceId', 'toFeatureId'] as const).forEach(need);
  });
export type NewCorrection = z.infer<typeof NewCorrection>;

export const Correction = z.object({ ...NewCorrection.shape, ...kept });
export type Correction = z.infer<typeof Correction>;

/** What a device sends: each entry is judged on its own, so one slip cannot hold back the rest. */
export const Batch = z.strictObject({
  deviceId: Id,
  entries: z.array(z.unknown()).min(1).max(batchMax),
});

/** What became of one entry of a batch, in the order sent. */
export const Outcome = z.union([
  z.object({
    id: z.string(),
    state: z.enum(['kept', 'known']).describe('known: it was in the book already, word for word'),
    seq: z.int(),
    receivedAt: Instant,
  }),
  z.object({
    id: z.string().describe('The id it came with, or empty where it had none'),
    state: z.literal('refused'),
    code: z.string(),
    at: z.string().describe('The field at fault'),
    says: z.string(),
  }),
]);
export type Outcome = z.infer<typeof Outcome>;
export const Outcomes = z.object({ outcomes: z.array(Outcome) });
