import { MathsInputError } from '../check';
import { normalQuantile } from './normal-quantile';
import { requireToleranceInputs } from './tolerance-guards';

/**
 * Natrella's approximation of `oneSidedToleranceFactor`, for checking printed tables that use it:
 * a = 1 - z_g^2/(2(n-1)), b = z_P^2 - z_g^2/n, k = (z_P + sqrt(z_P^2 - ab))/a.
 *
 * Cost: O(1). Source: [natrella-1963], as in [nist-handbook] 7.2.6.3.
 *
 * @throws {MathsInputError} as `oneSidedToleranceFactor`, and
 *   `one-sided-tolerance-factor-quick/too-few` also where a falls to zero or below
 */
export function oneSidedToleranceFactorQuick(
  n: number,
  content: number,
  confidence: number,
): number {
  const code = 'one-sided-tolerance-factor-quick';
  requireToleranceInputs('oneSidedToleranceFactorQuick', code, n, content, confidence);
  const zContent = normalQuantile(content);
  const zConfidence = normalQuantile(confidence);
  const a = 1 - (zConfidence * zConfidence) / (2 * (n - 1));
  const b = zContent * zContent - (zConfidence * zConfidence) / n;
  if (a <= 0) {
    throw new MathsInputError(
      `${code}/too-few`,
      `oneSidedToleranceFactorQuick requires more values at a confidence of ${confidence}, got ${n}`,
    );
  }
  return (zContent + Math.sqrt(zContent * zContent - a * b)) / a;
}
