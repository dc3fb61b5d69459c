import { combinedUncertainty } from '@/lib/maths/metrology/combined-uncertainty';
import { effectiveDegrees } from '@/lib/maths/metrology/effective-degrees';
import { expandedUncertainty } from '@/lib/maths/metrology/expanded-uncertainty';
import { fromCertificate, fromResolution } from '@/lib/maths/metrology/type-b';
import { standardDeviation } from '@/lib/maths/statistics/standard-deviation';
import type { Pool } from './gauge-history';
import { toldValue } from './told-value';

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
export const coverage = 0.9545;

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
  const told = toldValue(readings, gauges);
  if (told === null) return null;
  const { gauge, offPm, valuePm } = told;
  const count = offPm.length;
  const repeat = repeatability(offPm, history.get(gauge.id));
  if (repeat === null && gauge.uncertaintyPm === null) return null;

  const ofMeanPm = repeat === null ? 0 : repeat.sdPm / Math.sqrt(count);
  const parts = [
    { contribution: ofMeanPm, degrees: repeat?.degrees ?? Infinity },
    { contribution: fromResolution(gauge.resolutionPm), degrees: Infinity },
    { contribution: fromCertificate(gauge.uncertaintyPm ?? 0, 2), degrees: Infinity },
  ];
  const standardPm = combinedUncertainty(parts.map(({ contribution }) => contribution));
  const degrees = effectiveDegrees(parts);
  return {
    valuePm,
    standardPm,
    expandedPm: expandedUncertainty(standardPm, degrees, coverage).expanded,
    degrees,
    count,
    gaugeId: gauge.id,
    repeatability: repeat?.from ?? 'stated',
  };
}

function repeatability(
  offPm: readonly number[],
  pool: Pool | undefined,
): { sdPm: number; degrees: number; from: Size['repeatability'] } | null {
  if (offPm.length >= 3) {
    return { sdPm: standardDeviation(offPm), degrees: offPm.length - 1, from: 'own spread' };
  }
  if (pool === undefined) return null;
  return { sdPm: pool.sdPm, degrees: pool.degrees, from: 'gauge history' };
}
