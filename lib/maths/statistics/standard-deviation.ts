import { centred } from './centred';
import { requireCount } from './guards';

/**
 * Standard deviation of a sample, sqrt(sum (x - mean)^2 / (n - 1)), at least two values.
 *
 * Of one value it is not defined, and not zero. Cost: O(n). Source: [chan-1983].
 *
 * @throws {MathsInputError} `standard-deviation/too-few`, `mean/value`
 *
 * @example
 * standardDeviation([10.002, 10.004, 10.003]); // 0.001
 */
export function standardDeviation(values: ArrayLike<number>): number {
  requireCount('standardDeviation', 'standard-deviation', values.length, 2);
  return Math.sqrt(centred(values).squares / (values.length - 1));
}
