import { fTails } from './f-tails';
import { requireDegrees, requirePlace } from './guards';

/**
 * Probability that F with a degrees of freedom above and b below exceeds x: the p of an F test.
 *
 * A small tail keeps its relative precision.
 *
 * Source: [dlmf] 8.17.
 *
 * @throws {MathsInputError} `f-upper-tail/degrees`, `f-upper-tail/place`
 *
 * @example
 * fUpperTail(4.1028210151304, 2, 10); // 0.05
 */
export function fUpperTail(x: number, above: number, below: number): number {
  requireDegrees('fUpperTail', 'f-upper-tail', above);
  requireDegrees('fUpperTail', 'f-upper-tail', below);
  requirePlace('fUpperTail', 'f-upper-tail', x);
  return fTails(x, above, below).upper;
}
