import { fPdf } from './f-pdf';
import { fTails } from './f-tails';
import { requireChance, requireDegrees } from './guards';
import { positiveRoot } from './positive-root';

/**
 * The value F with a degrees of freedom above and b below stays under with probability p.
 *
 * Solved in the tail that is small; relative error about 1e-13. Cost: about ten tail evaluations.
 * Source: [dlmf] 8.17.
 *
 * @throws {MathsInputError} `f-quantile/chance`, `f-quantile/degrees`
 *
 * @example
 * fQuantile(0.95, 2, 10); // 4.1028210151304
 */
export function fQuantile(p: number, above: number, below: number): number {
  requireChance('fQuantile', 'f-quantile', p);
  requireDegrees('fQuantile', 'f-quantile', above);
  requireDegrees('fQuantile', 'f-quantile', below);
  const isLower = p <= 0.5;
  const tail = isLower ? p : 1 - p;
  const curve = (x: number) => {
    const { lower, upper } = fTails(x, above, below);
    return { value: isLower ? lower : upper, slope: fPdf(x, above, below) };
  };
  return positiveRoot(curve, tail, isLower, 1);
}
