import { betaPrefix } from './beta-prefix';
import { requireDegrees, requirePlace } from './guards';

/**
 * Density of F with a degrees of freedom above and b below:
 * (ax/(ax+b))^(a/2) (b/(ax+b))^(b/2) / (x B(a/2, b/2)); 0 at and below zero.
 *
 * Source: [dlmf] 8.17.
 *
 * @throws {MathsInputError} `f-pdf/degrees`, `f-pdf/place`
 */
export function fPdf(x: number, above: number, below: number): number {
  requireDegrees('fPdf', 'f-pdf', above);
  requireDegrees('fPdf', 'f-pdf', below);
  requirePlace('fPdf', 'f-pdf', x);
  if (!(x > 0 && x < Infinity)) return 0;
  const scaled = (above / below) * x;
  return betaPrefix(above / 2, below / 2, scaled / (1 + scaled), 1 / (1 + scaled)) / x;
}
