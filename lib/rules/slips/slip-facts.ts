import type { FeatureKind } from '@/lib/schema/feature';
import type { Gauge } from '@/lib/schema/gauge';
import type { LengthSetting } from '@/lib/units/parse-length';
import type { Limits } from '../verdict';

/** A reading as it was typed. Lengths are whole pm. */
export type DoubtedReading = {
  text: string;
  valuePm: number;
  /** One unit of the last place typed. */
  resolutionPm: number;
};

/** All that a reading is held against. Lengths are whole pm. */
export type SlipFacts = {
  kind: FeatureKind;
  nominalPm: number;
  limits: Limits;
  /** The other counted readings of the feature since its last cut. */
  othersPm: readonly number[];
  /** The size before the last cut; null where it was not cut or not measured. */
  beforeCutPm: number | null;
  gauge: Pick<
    Gauge,
    'kind' | 'unit' | 'resolutionPm' | 'uncertaintyPm' | 'rangeLowPm' | 'rangeHighPm'
  >;
  /** How well one reading of this gauge repeats, from its history; null where it has none. */
  repeatPm: number | null;
  /** The degrees of freedom behind that; left out, none are known. */
  repeatDegrees?: number;
  /** How the text is read: the person's mark, the unit of the reading, the nominal. */
  setting: LengthSetting;
  /** What the other features of the piece, and its partner, measure. */
  elsewhere: readonly Elsewhere[];
};

export type Elsewhere = { pieceId: string; featureId: string; lowPm: number; highPm: number };
