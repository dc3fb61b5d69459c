import { normalQuantile } from '../distributions/normal-quantile';
import { requireConfidence, requireFinite, requireWhole } from './guards';
import type { Interval } from './interval';

/**
 * Approximate two-sided interval on Cpk (or Ppk) from the mean and standard deviation of n pieces.
 *
 *     Cpk +- z sqrt(1 / (9 n) + Cpk^2 / (2 (n - 1)))
 *
 * Limits: normal sizes; an approximation made for n of 25 or more. Cost: one quantile.
 * Sources: [bissell-1990], [iso-22514-2].
 *
 * @throws {MathsInputError} `cpk-interval/not-finite`, `cpk-interval/not-whole`,
 *   `cpk-interval/confidence`
 *
 * @example
 * cpkInterval(10 / 9, 50, 0.95); // low ~ 0.8725, high ~ 1.3497
 */
export function cpkInterval(cpk: number, n: number, confidence: number): Interval {
  requireFinite('cpkInterval', 'Cpk', [cpk]);
  requireWhole('cpkInterval', 'number of pieces', n, 2, Infinity);
  requireConfidence('cpkInterval', confidence);
  const z = normalQuantile((1 + confidence) / 2);
  const half = z * Math.sqrt(1 / (9 * n) + cpk ** 2 / (2 * (n - 1)));
  return { low: cpk - half, high: cpk + half };
}
