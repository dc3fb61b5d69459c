import { chiSquareQuantile } from '../distributions/chi-square-quantile';
import { requireConfidence, requireNotNegative, requireWhole } from './guards';
import type { Interval } from './interval';

export type CpInterval = Interval & {
  /** The lower limit when only that is asked, at the same confidence. */
  lowOneSided: number;
};

/**
 * Interval on Cp (or Pp) worked from the standard deviation of n pieces.
 *
 *     Cp sqrt(chi2_(a/2)(n-1) / (n-1))  to  Cp sqrt(chi2_(1-a/2)(n-1) / (n-1)),  a = 1 - confidence
 *
 * and one-sided with chi2_a. Limits: normal sizes; s with n - 1. From twenty pieces the interval is
 * about a third of Cp to either side. Cost: three quantiles. Sources: [iso-22514-2],
 * [nist-handbook] 6.1.6, [montgomery-sqc].
 *
 * @throws {MathsInputError} `cp-interval/not-whole`, `cp-interval/confidence`, `cp-interval/negative`
 *
 * @example
 * cpInterval(1, 30, 0.95); // low ~ 0.744, high ~ 1.256, lowOneSided ~ 0.781
 */
export function cpInterval(cp: number, n: number, confidence: number): CpInterval {
  requireNotNegative('cpInterval', 'Cp', cp);
  requireWhole('cpInterval', 'number of pieces', n, 2, Infinity);
  requireConfidence('cpInterval', confidence);
  const freedom = n - 1;
  const at = (p: number) => cp * Math.sqrt(chiSquareQuantile(p, freedom) / freedom);
  return {
    low: at((1 - confidence) / 2),
    high: at((1 + confidence) / 2),
    lowOneSided: at(1 - confidence),
  };
}
