import { fTails } from './f-tails';
import { requireDegrees, requirePlace } from './guards';

/**
 * Probability that F with a degrees of freedom above and b below is at most x.
 *
 * Source: [dlmf] 8.17.
 *
 * @throws {MathsInputError} `f-cdf/degrees`, `f-cdf/place`
 */
export function fCdf(x: number, above: number, below: number): number {
  requireDegrees('fCdf', 'f-cdf', above);
  requireDegrees('fCdf', 'f-cdf', below);
  requirePlace('fCdf', 'f-cdf', x);
  return fTails(x, above, below).lower;
}
