import { complementaryError } from './complementary-error';
import { requirePlace } from './guards';

/**
 * Probability that a standard normal value is at most x: erfc(-x/sqrt 2)/2.
 *
 * The small tail keeps its relative precision, about 1e-15; for the upper tail ask at -x.
 * Cost: O(1). Source: [cody-1969].
 *
 * @throws {MathsInputError} `normal-cdf/place`
 *
 * @example
 * normalCdf(1.959963984540054); // 0.975
 */
export function normalCdf(x: number): number {
  requirePlace('normalCdf', 'normal-cdf', x);
  return 0.5 * complementaryError(-x * Math.SQRT1_2);
}
