import { betaTails } from './beta-tails';
import { requireDegrees, requirePlace } from './guards';
import { normalCdf } from './normal-cdf';

/**
 * Probability that Student's t exceeds a value: I_(nu/(nu+t^2))(nu/2, 1/2)/2 for t above zero.
 *
 * A small tail keeps its relative precision, about 1e-13. Degrees of freedom need not be whole;
 * infinite ones are the normal distribution. Cost: O(sqrt(nu)). Source: [dlmf] 8.17.
 *
 * @throws {MathsInputError} `student-t-upper-tail/degrees`, `student-t-upper-tail/place`
 *
 * @example
 * studentTUpperTail(2.262157162798205, 9); // 0.025
 */
export function studentTUpperTail(t: number, degrees: number): number {
  requireDegrees('studentTUpperTail', 'student-t-upper-tail', degrees, true);
  requirePlace('studentTUpperTail', 'student-t-upper-tail', t);
  if (degrees === Infinity) return normalCdf(-t);
  if (t === Infinity) return 0;
  if (t === -Infinity) return 1;
  const square = (t / degrees) * t;
  const beyond = betaTails(degrees / 2, 0.5, 1 / (1 + square), square / (1 + square)).lower / 2;
  return t < 0 ? 1 - beyond : beyond;
}
