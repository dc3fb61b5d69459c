import type { Verdict } from '@/lib/rules/verdict';
import type { TargetSizes } from '@/lib/text/target-figures';
import type { DecimalMark, LengthUnit } from '@/lib/units/picometres';

/** Both sides of a fit with every measured piece, the pairs and what is to make. Lengths are whole pm. */
export type FitRulesData = {
  unit: LengthUnit;
  decimal: DecimalMark;
  /** Step of the gauge: no tick is finer. */
  resolutionPm: number | null;
  /** Clearance aimed at; the external rule is slid over by it. */
  aimPm: number;
  /** What the clearances are counted in, pm; the usual step of the unit where it is left out. */
  stepPm?: number;
  internal: FitRulesSide;
  external: FitRulesSide;
  ties: readonly FitTie[];
  toMake: readonly FitToMake[];
};

export type FitRulesSide = {
  /** The part, as a heading: "Liner". */
  title: string;
  /** What is measured of it: "bore". */
  feature: string;
  lowerPm: number | null;
  upperPm: number | null;
  pieces: readonly FitRulesPiece[];
};

export type FitRulesPiece = { mark: string; sizePm: number; expandedPm: number };

/** A pair: both marks, their clearance (negative is interference) and the fit's verdict on it. */
export type FitTie = {
  internal: string;
  external: string;
  clearancePm: number;
  state: Verdict['state'];
};

/** A piece still to make, to its partner. */
export type FitToMake = TargetSizes & {
  internal: string;
  external: string;
  /** Which of the two is made; the external one where it is not said. */
  make?: 'internal' | 'external';
};
