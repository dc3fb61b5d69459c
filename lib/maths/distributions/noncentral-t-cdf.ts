import { MathsInputError } from '../check';
import { expectationOverSpread } from './expectation-over-spread';
import { requireDegrees, requirePlace } from './guards';
import { normalCdf } from './normal-cdf';

/**
 * Probability that noncentral t, (z + delta)/s with s^2 = chi-square/nu, is at most t.
 *
 * The integral of PHI(t s - delta) over the density of s; absolute error about 1e-13. Degrees of
 * freedom need not be whole. Cost: a few hundred normal probabilities. Source: [johnson-welch-1940].
 *
 * @throws {MathsInputError} `noncentral-t-cdf/degrees`, `noncentral-t-cdf/place`,
 *   `noncentral-t-cdf/shift`
 */
export function noncentralTCdf(t: number, degrees: number, shift: number): number {
  requireDegrees('noncentralTCdf', 'noncentral-t-cdf', degrees);
  requirePlace('noncentralTCdf', 'noncentral-t-cdf', t);
  if (!Number.isFinite(shift)) {
    throw new MathsInputError(
      'noncentral-t-cdf/shift',
      `noncentralTCdf requires a finite shift, got ${shift}`,
    );
  }
  if (!Number.isFinite(t)) return t > 0 ? 1 : 0;
  return expectationOverSpread((s) => normalCdf(t * s - shift), degrees);
}
