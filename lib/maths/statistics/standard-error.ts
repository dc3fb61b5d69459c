import { requireCount } from './guards';
import { standardDeviation } from './standard-deviation';

/**
 * Standard error of the mean: s/sqrt(n), at least two values.
 *
 * For independent values only; `lagOneAutocorrelation` tells when they are not. Cost: O(n).
 * Source: [jcgm-100] 4.2.3.
 *
 * @throws {MathsInputError} `standard-error/too-few`, `mean/value`
 */
export function standardError(values: ArrayLike<number>): number {
  requireCount('standardError', 'standard-error', values.length, 2);
  return standardDeviation(values) / Math.sqrt(values.length);
}
