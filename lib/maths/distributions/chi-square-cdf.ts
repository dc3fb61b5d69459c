import { gammaTails } from './gamma-tails';
import { requireDegrees, requirePlace } from './guards';

/**
 * Probability that chi-square is at most x: P(nu/2, x/2). A small one keeps its relative precision.
 *
 * Source: [dlmf] 8.2.
 *
 * @throws {MathsInputError} `chi-square-cdf/degrees`, `chi-square-cdf/place`
 *
 * @example
 * chiSquareCdf(3.841458820694124, 1); // 0.95
 */
export function chiSquareCdf(x: number, degrees: number): number {
  requireDegrees('chiSquareCdf', 'chi-square-cdf', degrees);
  requirePlace('chiSquareCdf', 'chi-square-cdf', x);
  return gammaTails(degrees / 2, x / 2).lower;
}
