import { studentTQuantile } from '../distributions/student-t-quantile';
import { requireConfidence } from './guards';
import type { Interval } from './interval';
import type { Line } from './least-squares-line';

/**
 * Two-sided interval on the slope of a fitted line, y per x: slope +- t se(slope), t with n - 2.
 *
 * Limits: readings normal about the line, equally spread. Cost: O(1). Source: [draper-smith].
 *
 * @throws {MathsInputError} `slope-interval/confidence`
 *
 * @example
 * slopeInterval(leastSquaresLine([1, 2, 3, 4], [1, 2, 3, 4]), 0.95); // { low: ~ 1, high: ~ 1 }
 */
export function slopeInterval(line: Line, confidence: number): Interval {
  requireConfidence('slopeInterval', confidence);
  const half = studentTQuantile((1 + confidence) / 2, line.degreesOfFreedom) * line.slopeSe;
  return { low: line.slope - half, high: line.slope + half };
}
