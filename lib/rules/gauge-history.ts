import {
  pooledStandardDeviation,
  type SpreadOfSet,
} from '@/lib/maths/statistics/pooled-standard-deviation';
import { standardDeviation } from '@/lib/maths/statistics/standard-deviation';

/** Repeatability of one gauge, pooled over the features it has measured more than once. */
export type Pool = {
  /** Pooled standard deviation of one reading, pm. */
  sdPm: number;
  /** Degrees of freedom behind it. */
  degrees: number;
};

/**
 * Pooled repeatability of each gauge over its sets of repeated readings (JCGM 100, 4.2.4). A set is what was read of one feature on one piece between two cuts.
 * Sets of one reading say nothing and are passed over. Cost: O(readings).
 */
export function gaugeHistory(
  sets: Iterable<readonly { gaugeId: string; valuePm: number }[]>,
): Map<string, Pool> {
  const spreads = new Map<string, SpreadOfSet[]>();
  for (const set of sets) {
    for (const [gaugeId, values] of byGauge(set)) {
      if (values.length < 2) continue;
      const sd = standardDeviation(values.map((value) => value - values[0]!));
      const known = spreads.get(gaugeId) ?? [];
      known.push({ sd, degrees: values.length - 1 });
      spreads.set(gaugeId, known);
    }
  }
  return new Map(
    [...spreads].map(([id, own]) => {
      const { sd, degrees } = pooledStandardDeviation(own);
      return [id, { sdPm: sd, degrees }];
    }),
  );
}

function byGauge(set: readonly { gaugeId: string; valuePm: number }[]): Map<string, number[]> {
  const groups = new Map<string, number[]>();
  for (const { gaugeId, valuePm } of set) {
    const group = groups.get(gaugeId);
    if (group === undefined) groups.set(gaugeId, [valuePm]);
    else group.push(valuePm);
  }
  return groups;
}
