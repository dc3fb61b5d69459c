import { betaPrefix } from './beta-prefix';
import { requireDegrees, requirePlace } from './guards';
import { normalPdf } from './normal-pdf';

/**
 * Density of Student's t: (1 + t^2/nu)^(-(nu+1)/2) / (sqrt(nu) B(1/2, nu/2)).
 *
 * Infinite degrees of freedom are the normal density. Cost: O(1). Source: [dlmf] 8.17.
 *
 * @throws {MathsInputError} `student-t-pdf/degrees`, `student-t-pdf/place`
 */
export function studentTPdf(t: number, degrees: number): number {
  requireDegrees('studentTPdf', 'student-t-pdf', degrees, true);
  requirePlace('studentTPdf', 'student-t-pdf', t);
  if (degrees === Infinity) return normalPdf(t);
  if (!Number.isFinite(t)) return 0;
  // At a fixed x = nu/(nu+1) the prefix gives 1/B without a logarithm of it.
  const x = degrees / (degrees + 1);
  const y = 1 / (degrees + 1);
  const oneOverBeta =
    betaPrefix(degrees / 2, 0.5, x, y) / (Math.exp((degrees / 2) * Math.log1p(-y)) * Math.sqrt(y));
  const fall = Math.exp(-((degrees + 1) / 2) * Math.log1p((t / degrees) * t));
  return (fall * oneOverBeta) / Math.sqrt(degrees);
}
