import { studentTQuantile } from '../distributions/student-t-quantile';
import { requireConfidence } from './guards';
import type { Interval } from './interval';
import { leverage } from './leverage';
import { lineAt } from './line-at';
import type { Line } from './least-squares-line';

export type BandAt = {
  /** Height of the line itself, units of y. */
  line: number;
  /** Where the mean of many readings at this x would be. */
  meanLine: Interval;
  /** Where one new reading at this x would be. */
  newReading: Interval;
};

/**
 * The two bands about a fitted line at one x, two-sided.
 *
 *     h = 1/n + (x - xb)^2 / Sxx
 *     mean line: y +- t s sqrt(h),  one new reading: y +- t s sqrt(1 + h),  t with n - 2
 *
 * Limits: each is a statement about this x alone, not about all x together; beyond the last reading
 * it also trusts the line to go on straight. Cost: O(1) beside one quantile. Source: [draper-smith].
 *
 * @throws {MathsInputError} `line-band/confidence`, `line-at/not-finite`
 *
 * @example
 * const line = leastSquaresLine([1, 2, 3, 4], [0.1, 0.3, 0.2, 0.4]);
 * lineBand(line, 5, 0.95).newReading; // wider than .meanLine
 */
export function lineBand(line: Line, x: number, confidence: number): BandAt {
  requireConfidence('lineBand', confidence);
  const y = lineAt(line, x);
  const reach = studentTQuantile((1 + confidence) / 2, line.degreesOfFreedom) * line.residualSd;
  const h = leverage(line, x);
  return {
    line: y,
    meanLine: { low: y - reach * Math.sqrt(h), high: y + reach * Math.sqrt(h) },
    newReading: { low: y - reach * Math.sqrt(1 + h), high: y + reach * Math.sqrt(1 + h) },
  };
}
