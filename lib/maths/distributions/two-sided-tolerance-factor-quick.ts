import { chiSquareQuantile } from './chi-square-quantile';
import { normalQuantile } from './normal-quantile';
import { requireToleranceInputs } from './tolerance-guards';

/**
 * Howe's approximation of `twoSidedToleranceFactor`:
 * k = z_((1+P)/2) sqrt((n-1)(1 + 1/n)/chi2_(1-g)(n-1)).
 *
 * Within about 1 % from 10 values up. Cost: one quantile. Source: [howe-1969], as in [nist-handbook] 7.2.6.3.
 *
 * @throws {MathsInputError} `two-sided-tolerance-factor-quick/too-few`,
 *   `two-sided-tolerance-factor-quick/content`, `two-sided-tolerance-factor-quick/confidence`
 *
 * @example
 * twoSidedToleranceFactorQuick(43, 0.9, 0.99); // 2.21732
 */
export function twoSidedToleranceFactorQuick(
  n: number,
  content: number,
  confidence: number,
): number {
  const code = 'two-sided-tolerance-factor-quick';
  requireToleranceInputs('twoSidedToleranceFactorQuick', code, n, content, confidence);
  const z = normalQuantile((1 + content) / 2);
  return z * Math.sqrt(((n - 1) * (1 + 1 / n)) / chiSquareQuantile(1 - confidence, n - 1));
}
