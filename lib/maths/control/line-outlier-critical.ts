import { studentTQuantile } from '../distributions/student-t-quantile';
import { refuse, requireWhole } from './guards';

/**
 * Critical value of the largest studentized residual about a straight line through n readings.
 *
 *     sqrt((n - 2) t^2 / (n - 3 + t^2)),  t the upper alpha / (2 n) point of Student's t with n - 3
 *
 * Bonferroni's bound: the chance that a clean run of n passes it is at most alpha. It is what Grubbs'
 * critical value is to a mean. Limits: n of 4 or more. Cost: one quantile. Sources: [lund-1975],
 * [cook-weisberg-1982].
 *
 * @throws {MathsInputError} `line-outlier-critical/not-whole`, `line-outlier-critical/significance`
 *
 * @example
 * lineOutlierCritical(10, 0.05); // ~ 2.364
 */
export function lineOutlierCritical(n: number, significance: number): number {
  requireWhole('lineOutlierCritical', 'number of readings', n, 4, Infinity);
  if (!(significance > 0 && significance < 1)) {
    const got = `a significance between 0 and 1, got ${significance}`;
    throw refuse('lineOutlierCritical', 'significance', got);
  }
  // From the small tail, so that no digits are lost where it is very small.
  const t = -studentTQuantile(significance / (2 * n), n - 3);
  return Math.sqrt(((n - 2) * t * t) / (n - 3 + t * t));
}
