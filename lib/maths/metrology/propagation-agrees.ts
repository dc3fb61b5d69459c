import type { CoverageInterval } from './coverage-interval';
import { numericalTolerance } from './numerical-tolerance';

/**
 * Whether the law of propagation may stand for the propagation of distributions: both ends of its
 * interval within the numerical tolerance of u of the ends found by Monte Carlo.
 *
 * |y - U - y_low| and |y + U - y_high| at most delta. Cost: O(1). Source: [jcgm-101] 8.1.
 *
 * @throws {MathsInputError} `numerical-tolerance/uncertainty`
 */
export function propagationAgrees(
  propagated: { value: number; u: number; expanded: number },
  drawnInterval: CoverageInterval,
  figures: 1 | 2 = 2,
): boolean {
  const { value, u, expanded } = propagated;
  const tolerance = numericalTolerance(u, figures);
  return (
    Math.abs(value - expanded - drawnInterval.low) <= tolerance &&
    Math.abs(value + expanded - drawnInterval.high) <= tolerance
  );
}
