import { twoSidedToleranceFactor } from '@/lib/maths/distributions/two-sided-tolerance-factor';

/** Share of pieces and confidence that an interval is given with: the last column of the printed tables. */
export const toleranceContent = 0.99;
export const toleranceConfidence = 0.95;

/**
 * The sizes between which at least 99 % of pieces made like these lie, with 95 % confidence, pm: the
 * two-sided statistical tolerance interval of a normal spread, mean -+ k s ([iso-16269-6]), k by
 * `twoSidedToleranceFactor`.
 *
 * Only of a run that a capability may be given of: steady, normal, and measured finely enough.
 *
 * @throws {MathsInputError} `two-sided-tolerance-factor/too-few` for fewer than two pieces
 */
export function toleranceInterval(run: { pieces: number; meanPm: number; sigmaPm: number }): {
  lowPm: number;
  highPm: number;
} {
  const k = twoSidedToleranceFactor(run.pieces, toleranceContent, toleranceConfidence);
  return { lowPm: run.meanPm - k * run.sigmaPm, highPm: run.meanPm + k * run.sigmaPm };
}
