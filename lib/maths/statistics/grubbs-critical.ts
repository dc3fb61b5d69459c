import { MathsInputError } from '../check';
import { studentTQuantile } from '../distributions/student-t-quantile';
import { requirePart } from './guards';

/**
 * Critical value of Grubbs' statistic for one outlier among n:
 * (n-1)/sqrt(n) sqrt(t^2/(n-2+t^2)), t the upper alpha/n point (one-sided) or alpha/(2n) point
 * (two-sided) of Student's t with n - 2 degrees of freedom. n at least 3.
 *
 * Cost: one quantile. Source: [nist-handbook] 1.3.5.17.1, [iso-5725-2].
 *
 * @throws {MathsInputError} `grubbs-critical/too-few`, `grubbs-critical/significance`
 *
 * @example
 * grubbsCritical(8, 0.05, 'one'); // 2.03165
 */
export function grubbsCritical(n: number, significance: number, sides: 'one' | 'two'): number {
  if (!(Number.isInteger(n) && n >= 3)) {
    throw new MathsInputError(
      'grubbs-critical/too-few',
      `grubbsCritical requires three values or more, got ${n}`,
    );
  }
  requirePart('grubbsCritical', 'grubbs-critical', 'significance', significance);
  const tail = significance / (sides === 'one' ? n : 2 * n);
  const t = studentTQuantile(tail, n - 2);
  return (n - 1) / Math.sqrt(n) / Math.hypot(1, Math.sqrt(n - 2) / t);
}
