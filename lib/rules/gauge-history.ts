import {
  pooledStandardDeviation,
  type SpreadOfSet,
} from '@/lib/maths/statistics/pooled-standard-deviation';
import type { GaugeSpread } from './gauge-spreads';

/** Repeatability of one gauge, pooled over the features it has measured more than once. */
export type Pool = {
  /** Pooled standard deviation of one reading, pm. */
  sdPm: number;
  /** Degrees of freedom behind it. */
  degrees: number;
};

/**
 * Pooled repeatability of each gauge over its sets of repeated readings (JCGM 100, 4.2.4). A set is what was
 * read of one feature on one piece between two cuts; its spreads are those of `gaugeSpreads`.
 * Cost: O(sets).
 */
export function gaugeHistory(sets: Iterable<readonly GaugeSpread[]>): Map<string, Pool> {
  const spreads = new Map<string, SpreadOfSet[]>();
  for (const set of sets) {
    for (const { gaugeId, spread } of set) {
      const known = spreads.get(gaugeId);
      if (known === undefined) spreads.set(gaugeId, [spread]);
      else known.push(spread);
    }
  }
  return new Map(
    [...spreads].map(([id, own]) => {
      const { sd, degrees } = pooledStandardDeviation(own);
      return [id, { sdPm: sd, degrees }];
    }),
  );
}
