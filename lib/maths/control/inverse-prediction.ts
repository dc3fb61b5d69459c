import { studentTQuantile } from '../distributions/student-t-quantile';
import { refuse, requireConfidence, requireWhole } from './guards';
import type { Line } from './least-squares-line';
import { leverage } from './leverage';

export type InverseQuestion = {
  /** The height asked for, units of y. */
  y: number;
  /** Two-sided. */
  confidence: number;
  /**
   * What reaches the height: `line` for the line itself (the mean of very many readings), or the
   * number of new readings whose mean it is, one or more.
   */
  of: 'line' | number;
};

export type InverseAnswer =
  | {
      found: true;
      /** Where the fitted line has that height, units of x. */
      x: number;
      /** Exact limits about it; not the same distance to both sides. */
      low: number;
      high: number;
      /** First-order standard error of x; understates far from the readings. */
      approxSe: number;
      g: number;
    }
  /** The slope cannot be told from scatter: no finite interval exists. */
  | { found: false; g: number };

/**
 * Where a fitted line reaches a height, with exact (Fieller) limits.
 *
 * The limits are the roots z = x - xb of
 *
 *     (b^2 - t^2 s^2 / Sxx) z^2 + 2 b (yb - y) z + (yb - y)^2 - t^2 s^2 (1/m + 1/n) = 0
 *
 * with m the number of new readings and 1/m = 0 for the line itself; t with n - 2. When
 * g = t^2 s^2 / (b^2 Sxx) is 1 or more there is no finite interval and none is given; a level line
 * has g = Infinity. Roots by the form that never subtracts near equals.
 *
 * Limits: as of `lineBand`; the answer may lie far outside the readings, where the line is a hope.
 * Cost: O(1) beside one quantile. Sources: [fieller-1954], [draper-smith].
 *
 * @throws {MathsInputError} `inverse-prediction/confidence`, `inverse-prediction/not-whole`,
 *   `inverse-prediction/not-finite`
 *
 * @example
 * inversePrediction(line, { y: 12, confidence: 0.95, of: 'line' });
 * // { found: true, x: 31.65, low: 28.32, high: 36.16, ... }
 */
export function inversePrediction(
  line: Line,
  { y, confidence, of }: InverseQuestion,
): InverseAnswer {
  requireConfidence('inversePrediction', confidence);
  if (of !== 'line') requireWhole('inversePrediction', 'number of new readings', of, 1, Infinity);
  if (!Number.isFinite(y)) {
    throw refuse('inversePrediction', 'not-finite', `a finite height, got ${y}`);
  }
  const t = studentTQuantile((1 + confidence) / 2, line.degreesOfFreedom);
  const { slope, residualSd, sumSquaresX, meanX, meanY, count } = line;
  if (slope === 0) return { found: false, g: Infinity };
  const g = (t * line.slopeSe) ** 2 / slope ** 2;
  if (g >= 1) return { found: false, g };

  const ownScatter = of === 'line' ? 0 : 1 / of;
  const reach = (t * residualSd) ** 2;
  const below = meanY - y;
  const a = slope ** 2 - reach / sumSquaresX;
  const b = slope * below;
  const c = below ** 2 - reach * (ownScatter + 1 / count);
  // b^2 - a c, rearranged so that it cannot round below zero while a > 0.
  const root = Math.sqrt((below ** 2 * reach) / sumSquaresX + a * reach * (ownScatter + 1 / count));
  const q = b < 0 ? -b + root : -b - root;
  const ends = q === 0 ? [0, 0] : [q / a, c / q];
  const x = meanX - below / slope;
  return {
    found: true,
    x,
    low: meanX + Math.min(...ends),
    high: meanX + Math.max(...ends),
    approxSe: (residualSd / Math.abs(slope)) * Math.sqrt(ownScatter + leverage(line, x)),
    g,
  };
}
