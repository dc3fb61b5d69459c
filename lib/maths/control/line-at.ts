import { refuse } from './guards';
import type { Line } from './least-squares-line';

/**
 * Height of a fitted line at x, in units of y: meanY + slope (x - meanX).
 *
 * Worked from the middle of the readings, not from the intercept, so that it holds on clock times.
 * Cost: O(1). Source: [draper-smith].
 *
 * @throws {MathsInputError} `line-at/not-finite`
 *
 * @example
 * lineAt(leastSquaresLine([1, 2, 3], [10, 20, 30]), 4); // ~ 40
 */
export function lineAt(line: Line, x: number): number {
  if (!Number.isFinite(x)) throw refuse('lineAt', 'not-finite', `a finite x, got ${x}`);
  return line.meanY + line.slope * (x - line.meanX);
}
