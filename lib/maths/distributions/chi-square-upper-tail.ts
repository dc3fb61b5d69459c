import { gammaTails } from './gamma-tails';
import { requireDegrees, requirePlace } from './guards';

/**
 * Probability that chi-square exceeds x: Q(nu/2, x/2). A small one keeps its relative precision.
 *
 * Source: [dlmf] 8.2.
 *
 * @throws {MathsInputError} `chi-square-upper-tail/degrees`, `chi-square-upper-tail/place`
 */
export function chiSquareUpperTail(x: number, degrees: number): number {
  requireDegrees('chiSquareUpperTail', 'chi-square-upper-tail', degrees);
  requirePlace('chiSquareUpperTail', 'chi-square-upper-tail', x);
  return gammaTails(degrees / 2, x / 2).upper;
}
