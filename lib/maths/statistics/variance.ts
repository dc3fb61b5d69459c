import { centred } from './centred';
import { requireCount } from './guards';

/**
 * Variance of a sample: sum (x - mean)^2 / (n - 1), at least two values. Two passes.
 *
 * Cost: O(n). Source: [chan-1983].
 *
 * @throws {MathsInputError} `variance/too-few`, `mean/value`
 *
 * @example
 * variance([1, 2, 4]); // 2.3333
 */
export function variance(values: ArrayLike<number>): number {
  requireCount('variance', 'variance', values.length, 2);
  return centred(values).squares / (values.length - 1);
}
