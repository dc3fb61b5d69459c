import { z } from 'zod';
import { Id, Instant, LengthPm, Name, PositivePm, thing, Unit } from './common';
import { SlopeNmPerMm } from './fit-rule';
import { notedAt } from './noted-at';

/** A temperature in thousandths of a degree C, as readings keep theirs. */
const MilliC = z.int().min(-100_000).max(1_000_000);

/** What the best pairing is: the furthest from the aim nearest, the least sum of distances, or the surest. */
export const PairingPurpose = z.enum(['worst best', 'closest', 'most likely']);
export type PairingPurpose = z.infer<typeof PairingPurpose>;

/** What an internal and an external feature must be to each other. Interference is a negative clearance. */
export const fit = thing({
  fixed: { jobId: Id, internalFeatureId: Id, externalFeatureId: Id },
  fields: {
    name: Name,
    way: z.enum(['limits', 'classes', 'rule']).describe('How the clearance was said'),
    classes: z.string().trim().max(16).nullable().describe('H7/g6, where the fit was said so'),
    minPm: LengthPm,
    maxPm: LengthPm,
    aimPm: LengthPm,
    governs: z
      .enum(['extreme', 'mean'])
      .describe('extreme: the smallest bore and the largest shaft decide; mean: the mean sizes do'),
    // May be left out, so that what was written for an earlier notebook is still taken.
    atPm: PositivePm.nullish().describe('The diameter its classes or its rule were worked out at'),
    ruleName: Name.nullish().describe('The rule of practice, as it was called when it was taken'),
    ruleFixedPm: LengthPm.nullish().describe('Constant of that rule, as it then stood'),
    ruleMinNmPerMm: SlopeNmPerMm.nullish(),
    ruleAimNmPerMm: SlopeNmPerMm.nullish(),
    ruleMaxNmPerMm: SlopeNmPerMm.nullish(),
    soakedLowMilliC: MilliC.nullish().describe('Coldest that both pieces are together'),
    soakedHighMilliC: MilliC.nullish().describe('Hottest that both pieces are together'),
    badInternalMilliC: MilliC.nullish().describe('The outer piece at the bad moment'),
    badExternalMilliC: MilliC.nullish().describe('The inner piece at the bad moment'),
    purpose: PairingPurpose.nullish().describe(
      'What the best pairing is; null: the worst pair best',
    ),
    leftOutPieceIds: z.array(Id).max(2000).optional().describe('Pieces that take no part in it'),
  },
  made: {},
});
export type Fit = z.infer<typeof fit.Row>;

// Names in these two stand by length and letter, as PostgreSQL keeps them: so both engines say a row alike.

/** What the size of one piece stood on when a person looked at the pair. */
export const PairSide = z.strictObject({
  sizePm: LengthPm,
  gaugeId: Id,
  readings: z
    .array(z.strictObject({ at: z.string().max(60), id: Id, valuePm: LengthPm }))
    .max(500)
    .describe('The readings that told it, and at which station and direction'),
  expandedPm: LengthPm.min(0),
  gaugeStruck: z.boolean(),
  resolutionPm: PositivePm.describe('Of the gauge, as it then stood'),
  gaugeUncertaintyPm: LengthPm.nullable().describe('As then stated of the gauge; null: not known'),
});
export type PairSide = z.infer<typeof PairSide>;

/** Why a piece takes no part in its fit any more. */
export const PieceFate = z.enum(['struck', 'scrapped', 'sleeve']);
export type PieceFate = z.infer<typeof PieceFate>;

/** A person made a pair final, or looked at it again and let it stand; with all that it stood on. */
export const PairLook = z.strictObject({
  at: Instant,
  act: z.enum(['made final', 'let stand']),
  maxPm: LengthPm,
  minPm: LengthPm,
  governs: z.enum(['extreme', 'mean']),
  external: PairSide.nullable(),
  internal: PairSide.nullable(),
  personId: Id.nullable(),
  clearancePm: LengthPm.nullable(),
  externalFate: PieceFate.nullish().describe(
    'What had become of the piece; not kept in an old one',
  ),
  internalFate: PieceFate.nullish(),
  uncertaintyPm: LengthPm.min(0).nullable(),
});
export type PairLook = z.infer<typeof PairLook>;

/** Two pieces that belong together, or are kept apart, by a person's decision. */
export const pair = thing({
  fixed: { jobId: Id, fitId: Id, internalPieceId: Id, externalPieceId: Id },
  fields: {
    state: z.enum(['final', 'locked', 'left out', 'undone']),
    mark: z.string().trim().max(24).describe('The pair mark both pieces carry'),
    clearancePm: LengthPm.nullable().describe('As made, when it was made final'),
    uncertaintyPm: LengthPm.min(0).nullable().describe('Expanded, when it was made final'),
    decidedAt: Instant.nullable(),
    personId: Id.nullable(),
    reason: z.string().trim().max(200).nullish().describe('Why it was undone'),
    looks: z
      .array(PairLook)
      .max(200)
      .optional()
      .describe('Each time a person made it final or let it stand, in order; none for an old one'),
  },
  made: {},
});
export type Pair = z.infer<typeof pair.Row>;

/** What a new stretch of learning begins with; `sleeve` is metal put on again. */
export const CutChange = z.enum(['tool', 'insert', 'speed', 'overhang', 'sleeve', 'other']);
export type CutChange = z.infer<typeof CutChange>;

/** How a cut was asked for. May be left out: nothing is then claimed of it. */
export const cutSetting = {
  partnerPieceId: Id.nullish().describe('The piece it was being made to'),
  aimPm: LengthPm.nullish().describe('The size it was cut towards'),
  dial: z.enum(['radius', 'diameter']).nullish().describe('What one division of the slide moves'),
  divisionPm: PositivePm.nullish().describe('One division of that dial'),
  dialUnit: Unit.nullish().describe('What that dial is marked in'),
  fineFeed: z
    .number()
    .positive()
    .max(1000)
    .nullish()
    .describe('Dial movement for one of infeed: 10 for a top slide set over to 5.74 degrees'),
  changed: CutChange.nullish().describe(
    'What was changed before it: what earlier cuts took says nothing of this one',
  ),
  temperatureMilliC: z
    .int()
    .min(-100_000)
    .max(1_000_000)
    .nullish()
    .describe('Of the piece when it was measured before the cut'),
};

/** One cut toward a target: what was asked for and what came off. All on diameter. */
export const cut = thing({
  fixed: {
    jobId: Id,
    pieceId: Id,
    featureId: Id,
    ordinal: z.int().min(1).max(1000),
    lastReadingId: Id.nullable().describe(
      'The last reading before the cut: up to it, readings tell the old size',
    ),
  },
  fields: {
    spring: z.boolean().describe('A spring pass asks for nothing'),
    askedPm: LengthPm.min(0).describe('0 where it is not a spring pass: nobody said'),
    beforePm: LengthPm,
    afterPm: LengthPm.nullable(),
    tool: z
      .string()
      .trim()
      .max(120)
      .describe('What it was cut with, a machine or a tool by name; empty where nobody said'),
    ...cutSetting,
  },
  made: notedAt,
});
export type Cut = z.infer<typeof cut.Row>;
