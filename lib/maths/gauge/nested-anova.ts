import { fUpperTail } from '../distributions/f-upper-tail';
import { refuse, requireAtLeast, requireFinite, requireWhole } from '../control/guards';
import { mean } from '../statistics/mean';
import { variance } from '../statistics/variance';

export type NestedInput = {
  /** Mean and standard deviation of the readings of each day (or set-up, or gauge), one unit. */
  means: readonly number[];
  sds: readonly number[];
  /** Readings on each day, the same number on all. */
  readings: number;
};

export type NestedAnova = {
  mean: number;
  /** Variance of a reading as the day means tell it, K s^2(day means), with J - 1. */
  betweenMeanSquare: number;
  betweenDegrees: number;
  /** Variance of a reading within the days, with J (K - 1). */
  withinMeanSquare: number;
  withinDegrees: number;
  /** Variance from day to day alone, 0 where the days differ no more than readings do. */
  betweenVariance: number;
  /** Standard uncertainty of the mean, the days counted as they differ; with J - 1. */
  uMean: number;
  /** The same where days are taken not to matter, all readings pooled; with J K - 1. */
  uMeanPooled: number;
  /** Ratio of the mean squares and its chance. Left out when nothing varies within the days. */
  f?: number;
  p?: number;
};

/**
 * Repeats nested in days: how much comes from day to day, and how well the mean is known.
 *
 *     s_a^2 = K s^2(day means), J - 1;  s_b^2 = mean of s^2 within days, J (K - 1);  F = s_a^2 / s_b^2
 *     between days (s_a^2 - s_b^2) / K;  u^2(mean) = s_a^2 / (J K), or pooled
 *     ((J - 1) s_a^2 + J (K - 1) s_b^2) / (J K (J K - 1))
 *
 * Limits: as many readings on every day, two days or more; days and readings drawn at random. A
 * negative variance between days is given as 0. Cost: O(days). Source: [jcgm-100] H.5.
 *
 * @throws {MathsInputError} `nested-anova/too-few`, `nested-anova/lengths`, `nested-anova/not-finite`,
 *   `nested-anova/negative`, `nested-anova/not-whole`
 *
 * @example
 * nestedAnova({ means: [10.1, 10.3], sds: [0.1, 0.1], readings: 5 }).f; // ~ 10
 */
export function nestedAnova({ means, sds, readings }: NestedInput): NestedAnova {
  const caller = 'nestedAnova';
  const days = means.length;
  requireAtLeast(caller, 'days', days, 2);
  if (sds.length !== days) {
    throw refuse(caller, 'lengths', `one spread for each mean, got ${sds.length} and ${days}`);
  }
  requireFinite(caller, 'means', means);
  requireFinite(caller, 'spreads', sds);
  const wrong = sds.find((sd) => sd < 0);
  if (wrong !== undefined) throw refuse(caller, 'negative', `spreads from zero up, got ${wrong}`);
  requireWhole(caller, 'number of readings', readings, 2, Infinity);

  const betweenMeanSquare = readings * variance(means);
  const withinMeanSquare = mean(sds.map((sd) => sd * sd));
  const [betweenDegrees, withinDegrees] = [days - 1, days * (readings - 1)];
  const all = days * readings;
  const pooled =
    (betweenDegrees * betweenMeanSquare + withinDegrees * withinMeanSquare) / (all - 1);
  const found: NestedAnova = {
    mean: mean(means),
    betweenMeanSquare,
    betweenDegrees,
    withinMeanSquare,
    withinDegrees,
    betweenVariance: Math.max(0, betweenMeanSquare - withinMeanSquare) / readings,
    uMean: Math.sqrt(betweenMeanSquare / all),
    uMeanPooled: Math.sqrt(pooled / all),
  };
  if (withinMeanSquare === 0) return found;
  const f = betweenMeanSquare / withinMeanSquare;
  return { ...found, f, p: fUpperTail(f, betweenDegrees, withinDegrees) };
}
