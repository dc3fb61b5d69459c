import { MathsInputError } from '../check';
import { studentTQuantile } from '../distributions/student-t-quantile';
import { requirePart } from './guards';

export type Interval = { low: number; high: number };

/**
 * Two-sided confidence interval of a mean: mean -+ t s/sqrt(n), t of n - 1 degrees of freedom.
 *
 * For independent values near enough to normal. Cost: one quantile. Source: [jcgm-100] G.3.
 *
 * @throws {MathsInputError} `mean-interval/sample`, `mean-interval/confidence`
 *
 * @example
 * meanInterval({ mean: 10.003, sd: 0.001, n: 3 }, 0.95); // 10.00052 to 10.00548
 */
export function meanInterval(
  { mean, sd, n }: { mean: number; sd: number; n: number },
  confidence: number,
): Interval {
  if (!(n >= 2 && sd >= 0 && Number.isFinite(sd) && Number.isFinite(mean))) {
    throw new MathsInputError(
      'mean-interval/sample',
      `meanInterval requires two values or more and their spread, got ${n} and ${sd}`,
    );
  }
  requirePart('meanInterval', 'mean-interval', 'confidence', confidence);
  const half = (-studentTQuantile((1 - confidence) / 2, n - 1) * sd) / Math.sqrt(n);
  return { low: mean - half, high: mean + half };
}
