import { betaTails } from './beta-tails';
import { requireChance, requireDegrees } from './guards';
import { normalQuantile } from './normal-quantile';
import { positiveRoot } from './positive-root';
import { studentTPdf } from './student-t-pdf';
import { studentTUpperTail } from './student-t-upper-tail';

/**
 * The value Student's t stays below with probability p.
 *
 * Solved in the tail that is small, or from the middle when p is near 1/2; relative error about
 * 1e-13. Degrees of freedom need not be whole (Welch-Satterthwaite); infinite ones are normal.
 * Cost: about ten tail evaluations. Source: [dlmf] 8.17.
 *
 * @throws {MathsInputError} `student-t-quantile/chance`, `student-t-quantile/degrees`
 *
 * @example
 * studentTQuantile(0.975, 9); // 2.262157162798205
 */
export function studentTQuantile(p: number, degrees: number): number {
  requireChance('studentTQuantile', 'student-t-quantile', p);
  requireDegrees('studentTQuantile', 'student-t-quantile', degrees, true);
  if (degrees === Infinity) return normalQuantile(p);
  if (p === 0.5) return 0;
  const size = fromMiddle(Math.abs(p - 0.5), Math.min(p, 1 - p), degrees);
  return p < 0.5 ? -size : size;
}

function fromMiddle(middle: number, tail: number, degrees: number): number {
  const slope = (t: number) => studentTPdf(t, degrees);
  const guess = Math.abs(normalQuantile(tail));
  if (middle < 0.25) {
    const within = (t: number) => ({ value: chanceWithin(t, degrees), slope: slope(t) });
    return positiveRoot(within, middle, true, guess);
  }
  const beyond = (t: number) => ({ value: studentTUpperTail(t, degrees), slope: slope(t) });
  return positiveRoot(beyond, tail, false, guess);
}

/** Probability between 0 and t, t above zero. */
function chanceWithin(t: number, degrees: number): number {
  const square = (t / degrees) * t;
  return betaTails(0.5, degrees / 2, square / (1 + square), 1 / (1 + square)).lower / 2;
}
