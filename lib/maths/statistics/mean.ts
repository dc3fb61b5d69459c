import { refuseSum } from './guards';
import { sumOff } from './sum-off';

/**
 * Arithmetic mean, in two passes: sum/n, then the mean of what is left over is added.
 *
 * The second pass takes out the rounding of the first, so that large offsets keep all their digits.
 * Cost: O(n), two plain passes over numbers or a typed array. Source: [chan-1983].
 *
 * @throws {MathsInputError} `mean/too-few`, `mean/value`
 *
 * @example
 * mean([10.002, 10.004, 10.003]); // 10.003
 */
export function mean(values: ArrayLike<number>): number {
  const first = sumOff(values, 0) / values.length;
  if (!Number.isFinite(first)) refuseSum('mean', 'mean', values);
  return first + sumOff(values, first) / values.length;
}
