import { MathsInputError } from '../check';
import { chiSquareQuantile } from '../distributions/chi-square-quantile';
import { requirePart } from './guards';
import type { Interval } from './mean-interval';

/**
 * Two-sided confidence interval of the sigma of a normal population, from a standard deviation with
 * its degrees of freedom: s sqrt(nu/chi2_(1-a/2)) to s sqrt(nu/chi2_(a/2)).
 *
 * Leans on the population being normal, more than the interval of a mean does.
 * Cost: two quantiles. Source: [nist-handbook] 1.3.5.8 for the statistic.
 *
 * @throws {MathsInputError} `spread-interval/sample`, `spread-interval/confidence`
 *
 * @example
 * spreadInterval(0.001, 9, 0.95); // 0.000688 to 0.001826
 */
export function spreadInterval(sd: number, degrees: number, confidence: number): Interval {
  if (!(degrees > 0 && degrees < Infinity && sd >= 0 && Number.isFinite(sd))) {
    throw new MathsInputError(
      'spread-interval/sample',
      `spreadInterval requires a spread and degrees of freedom above zero, got ${sd} and ${degrees}`,
    );
  }
  requirePart('spreadInterval', 'spread-interval', 'confidence', confidence);
  const at = (p: number) => sd * Math.sqrt(degrees / chiSquareQuantile(p, degrees));
  return { low: at((1 + confidence) / 2), high: at((1 - confidence) / 2) };
}
