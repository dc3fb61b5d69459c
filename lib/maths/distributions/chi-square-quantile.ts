import { chiSquarePdf } from './chi-square-pdf';
import { gammaTails } from './gamma-tails';
import { requireChance, requireDegrees } from './guards';
import { normalQuantile } from './normal-quantile';
import { positiveRoot } from './positive-root';

/**
 * The value chi-square stays below with probability p.
 *
 * Solved in the tail that is small, from the cube-root approximation; relative error about 1e-13.
 * Cost: about ten tail evaluations. Source of the first guess: [wilson-hilferty-1931].
 *
 * @throws {MathsInputError} `chi-square-quantile/chance`, `chi-square-quantile/degrees`
 *
 * @example
 * chiSquareQuantile(0.95, 4); // 9.487729036781156
 */
export function chiSquareQuantile(p: number, degrees: number): number {
  requireChance('chiSquareQuantile', 'chi-square-quantile', p);
  requireDegrees('chiSquareQuantile', 'chi-square-quantile', degrees);
  const isLower = p <= 0.5;
  const tail = isLower ? p : 1 - p;
  const curve = (x: number) => {
    const { lower, upper } = gammaTails(degrees / 2, x / 2);
    return { value: isLower ? lower : upper, slope: chiSquarePdf(x, degrees) };
  };
  return positiveRoot(curve, tail, isLower, firstGuess(p, degrees));
}

function firstGuess(p: number, degrees: number): number {
  const spread = 2 / (9 * degrees);
  const cube = 1 - spread + normalQuantile(p) * Math.sqrt(spread);
  return cube > 0.1 ? degrees * cube ** 3 : degrees * 1e-3;
}
