import { normalCdf } from '../distributions/normal-cdf';
import { centred } from './centred';
import { requireSpread, requireValues } from './guards';

export type AndersonDarlingResult = {
  aSquared: number;
  /** Corrected for the sample size, mean and spread estimated: A2 (1 + 0.75/n + 2.25/n^2). */
  aSquaredStar: number;
  p: number;
};

/**
 * Anderson-Darling test of normality, mean and standard deviation estimated from the values.
 *
 * A2 = -n - (1/n) sum (2i-1)[ln PHI(y_i) + ln(1 - PHI(y_(n+1-i)))]. Looks harder at the tails than
 * Shapiro-Wilk does. A small p says the values are hardly from one normal population. p is an
 * approximation of about two figures; beyond A2* = 10 the p of 10 is given, 3.7e-24. At least 8
 * values are usual; fewer than 3 are refused. Cost: O(n log n). Source: [dagostino-stephens-1986].
 *
 * @throws {MathsInputError} `anderson-darling-test/too-few`, `anderson-darling-test/value`,
 *   `anderson-darling-test/no-spread`
 */
export function andersonDarlingTest(values: ArrayLike<number>): AndersonDarlingResult {
  requireValues('andersonDarlingTest', 'anderson-darling-test', values, 3);
  const n = values.length;
  const { mean, squares } = centred(values);
  requireSpread('andersonDarlingTest', 'anderson-darling-test', squares);
  const sd = Math.sqrt(squares / (n - 1));
  const sorted = Float64Array.from(values, (value) => (value - mean) / sd).sort();
  let sum = 0;
  for (let i = 0; i < n; i += 1) {
    sum += (2 * i + 1) * (logCdf(sorted[i]!) + logCdf(-sorted[n - 1 - i]!));
  }
  const aSquared = -n - sum / n;
  const aSquaredStar = aSquared * (1 + 0.75 / n + 2.25 / (n * n));
  return { aSquared, aSquaredStar, p: chanceOf(aSquaredStar) };
}

function chanceOf(star: number): number {
  const a = Math.min(star, 10);
  if (a < 0.2) return 1 - Math.exp(-13.436 + 101.14 * a - 223.73 * a * a);
  if (a < 0.34) return 1 - Math.exp(-8.318 + 42.796 * a - 59.938 * a * a);
  if (a < 0.6) return Math.exp(0.9177 - 4.279 * a - 1.38 * a * a);
  return Math.exp(1.2937 - 5.709 * a + 0.0186 * a * a);
}

/** ln PHI(x); below -30 by the asymptotic series, where PHI itself would vanish. */
function logCdf(x: number): number {
  if (x > -30) return Math.log(normalCdf(x));
  const inverse = 1 / (x * x);
  const series = Math.log1p(-inverse * (1 - 3 * inverse * (1 - 5 * inverse)));
  return -0.5 * x * x - Math.log(-x * Math.sqrt(2 * Math.PI)) + series;
}
