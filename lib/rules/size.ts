import { studentTQuantile } from '@/lib/maths/distributions/student-t-quantile';
import type { Pool } from './gauge-history';

/** What is known of a gauge, pm. */
export type GaugeFacts = {
  id: string;
  resolutionPm: number;
  /** Expanded uncertainty (k = 2) as stated; null is "not known". */
  uncertaintyPm: number | null;
};

/** What the readings of one feature on one piece say together. */
export type Size = {
  /** Best estimate, whole pm. */
  valuePm: number;
  /** Combined standard uncertainty, pm. */
  standardPm: number;
  /** Expanded uncertainty at 95.45 %, pm: the plus-and-minus that is shown. */
  expandedPm: number;
  /** Effective degrees of freedom (Welch-Satterthwaite); Infinity where only stated figures enter. */
  degrees: number;
  /** How many readings it stands on. */
  count: number;
  /** The gauge whose readings told it. */
  gaugeId: string;
  /** Where its repeatability came from. */
  repeatability: 'own spread' | 'gauge history' | 'stated';
};

/** What 2 standard deviations of a normal distribution cover (JCGM 100, table G.2). */
const coverage = 0.9545;

/**
 * Size of a feature on a piece from its counted readings.
 *
 * Mean of the readings of the finest gauge among them. Combined by JCGM 100: repeatability of the mean
 * (own spread from three readings on; before that the gauge's pooled history on this job), resolution
 * q / sqrt 12 of the gauge, and half the stated expanded uncertainty of the gauge. U = t(95.45 %, nu) u
 * with nu by Welch-Satterthwaite.
 *
 * Null where nothing says how well a reading repeats: one or two readings with a gauge that has neither
 * a history nor a stated uncertainty. Own spread includes the piece's own form, so a tapered bore is
 * honestly less sure. No temperature correction is made here.
 */
export function sizeOf(
  readings: readonly { valuePm: number; gaugeId: string }[],
  gauges: ReadonlyMap<string, GaugeFacts>,
  history: ReadonlyMap<string, Pool>,
): Size | null {
  const gauge = finest(readings, gauges);
  if (gauge === undefined) return null;
  const values = readings.filter((r) => r.gaugeId === gauge.id).map((r) => r.valuePm);
  const count = values.length;
  const origin = values[0]!;
  const mean = values.reduce((sum, value) => sum + (value - origin), 0) / count;
  const repeat = repeatability(values, origin + mean, history.get(gauge.id));
  if (repeat === null && gauge.uncertaintyPm === null) return null;

  const ofMeanPm = repeat === null ? 0 : repeat.sdPm / Math.sqrt(count);
  const resolutionPm = gauge.resolutionPm / Math.sqrt(12);
  const statedPm = (gauge.uncertaintyPm ?? 0) / 2;
  const standardPm = Math.hypot(ofMeanPm, resolutionPm, statedPm);
  const degrees =
    repeat === null || ofMeanPm === 0
      ? Infinity
      : Math.max(1, repeat.degrees * (standardPm / ofMeanPm) ** 4);
  const factor = studentTQuantile((1 + coverage) / 2, Math.min(degrees, 1e6));
  return {
    valuePm: Math.round(origin + mean),
    standardPm,
    expandedPm: factor * standardPm,
    degrees,
    count,
    gaugeId: gauge.id,
    repeatability: repeat?.from ?? 'stated',
  };
}

function finest(
  readings: readonly { gaugeId: string }[],
  gauges: ReadonlyMap<string, GaugeFacts>,
): GaugeFacts | undefined {
  return [...new Set(readings.map((r) => r.gaugeId))]
    .flatMap((id) => gauges.get(id) ?? [])
    .sort((a, b) => a.resolutionPm - b.resolutionPm || (a.id < b.id ? -1 : 1))[0];
}

function repeatability(
  values: readonly number[],
  meanPm: number,
  pool: Pool | undefined,
): { sdPm: number; degrees: number; from: Size['repeatability'] } | null {
  if (values.length >= 3) {
    const squares = values.reduce((sum, value) => sum + (value - meanPm) ** 2, 0);
    const degrees = values.length - 1;
    return { sdPm: Math.sqrt(squares / degrees), degrees, from: 'own spread' };
  }
  if (pool !== undefined && pool.degrees > 0) {
    return { sdPm: pool.sdPm, degrees: pool.degrees, from: 'gauge history' };
  }
  return null;
}
