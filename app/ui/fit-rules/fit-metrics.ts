import type { Shape } from '../strip/shape';
import type { FitRole } from './fit-role';
import type { FitRulesPiece } from './fit-rules-data';

/** Heights and letter sizes of the two rules, px. */
export const bandPx = 34;
export const rulesApartPx = 70;
export const uprightPx = 24;
export const numeralLanePx = 20;
export const leaderLeastPx = 8;
export const leaderMostPx = 40;
export const markLanePx = 22;
export const markPx = 17;
export const numeralPx = 13;
export const titlePx = 16;
export const clearancePx = 16;
/** A numeral at the end of a rule may stand this far past it. */
export const overhangPx = 16;

/** From a middle down to the baseline of figures that are centred on it, in em. */
export const centreEm = 0.36;

export type Shapes = Shape<FitRole>[];

/** A piece where it stands on its rule. */
export type Standing = FitRulesPiece & { x: number; isToMake: boolean };

/** One of the two rules: its baseline, which way its zone lies, where a size stands on it. */
export type Rule = { y: number; up: -1 | 1; xOf: (pm: number) => number; slidPm: number };

export type Axis = { fromPx: number; toPx: number };
