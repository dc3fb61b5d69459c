import { gammaPrefix } from './gamma-prefix';
import { requireDegrees, requirePlace } from './guards';

/**
 * Density of chi-square: x^(nu/2 - 1) e^(-x/2) / (2^(nu/2) Gamma(nu/2)); 0 at and below zero.
 *
 * At zero itself the density of fewer than two degrees of freedom has no bound; 0 is given there.
 *
 * Source: [dlmf] 8.2.
 *
 * @throws {MathsInputError} `chi-square-pdf/degrees`, `chi-square-pdf/place`
 */
export function chiSquarePdf(x: number, degrees: number): number {
  requireDegrees('chiSquarePdf', 'chi-square-pdf', degrees);
  requirePlace('chiSquarePdf', 'chi-square-pdf', x);
  return x > 0 && x < Infinity ? gammaPrefix(degrees / 2, x / 2) / x : 0;
}
