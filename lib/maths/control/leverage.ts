import type { Line } from './least-squares-line';

/**
 * How much of the scatter's variance a fitted line carries at x: 1/n + (x - xb)^2 / Sxx.
 *
 * No unit; smallest, 1/n, in the middle of the readings. Cost: O(1). Source: [draper-smith].
 *
 * @example
 * leverage(leastSquaresLine([1, 2, 3], [1, 2, 3]), 2); // 1/3
 */
export function leverage(line: Line, x: number): number {
  return 1 / line.count + (x - line.meanX) ** 2 / line.sumSquaresX;
}
