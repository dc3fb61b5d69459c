import { noncentralTQuantile } from './noncentral-t-quantile';
import { normalQuantile } from './normal-quantile';
import { requireToleranceInputs } from './tolerance-guards';

/**
 * Factor k of a one-sided statistical tolerance interval, mean + k s (or mean - k s): with the given
 * confidence at least the given content of a normal population lies below (above).
 *
 * k = t'_g(n - 1; z_P sqrt n)/sqrt n, noncentral t; exact. Cost: a few milliseconds.
 * Source: [iso-16269-6].
 *
 * @throws {MathsInputError} `one-sided-tolerance-factor/too-few`,
 *   `one-sided-tolerance-factor/content`, `one-sided-tolerance-factor/confidence`
 *
 * @example
 * oneSidedToleranceFactor(10, 0.95, 0.95); // 2.91096
 */
export function oneSidedToleranceFactor(n: number, content: number, confidence: number): number {
  const code = 'one-sided-tolerance-factor';
  requireToleranceInputs('oneSidedToleranceFactor', code, n, content, confidence);
  const root = Math.sqrt(n);
  return noncentralTQuantile(confidence, n - 1, normalQuantile(content) * root) / root;
}
