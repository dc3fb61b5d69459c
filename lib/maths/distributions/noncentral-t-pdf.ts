import { MathsInputError } from '../check';
import { expectationOverSpread } from './expectation-over-spread';
import { requireDegrees, requirePlace } from './guards';
import { normalPdf } from './normal-pdf';

/**
 * Density of noncentral t: the mean of s phi(t s - delta) over the density of s, s^2 = chi-square/nu.
 *
 * Source: [johnson-welch-1940].
 *
 * @throws {MathsInputError} `noncentral-t-pdf/degrees`, `noncentral-t-pdf/place`,
 *   `noncentral-t-pdf/shift`
 */
export function noncentralTPdf(t: number, degrees: number, shift: number): number {
  requireDegrees('noncentralTPdf', 'noncentral-t-pdf', degrees);
  requirePlace('noncentralTPdf', 'noncentral-t-pdf', t);
  if (!Number.isFinite(shift)) {
    throw new MathsInputError(
      'noncentral-t-pdf/shift',
      `noncentralTPdf requires a finite shift, got ${shift}`,
    );
  }
  if (!Number.isFinite(t)) return 0;
  return expectationOverSpread((s) => s * normalPdf(t * s - shift), degrees);
}
