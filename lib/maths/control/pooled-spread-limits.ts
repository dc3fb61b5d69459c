import { mean } from '../statistics/mean';
import { variance } from '../statistics/variance';
import { checkSubgroups, type Subgroups } from './check-subgroups';
import { controlChartConstants } from './control-chart-constants';
import type { Interval } from './interval';
import { isTrial } from './is-trial';

export type PooledSpreadLimits = {
  /** Mean of all readings, so that larger subgroups weigh more. */
  grandMean: number;
  /** Pooled standard deviation within subgroups; it stands for sigma. */
  pooledSd: number;
  /** Limits of each subgroup by its own size, in the order given. */
  subgroups: { size: number; means: Interval; spreads: Interval }[];
  /** Fewer than twenty subgroups: the limits may still move a good deal. */
  trial: boolean;
};

/**
 * Limits of a mean chart and an s chart for subgroups that differ in size.
 *
 *     grand mean = sum n xb / sum n,  s_p^2 = sum (n - 1) s^2 / sum (n - 1)
 *     means: grand mean +- A3(n) s_p;  s: B3(n) s_p to B4(n) s_p
 *
 * Limits: subgroups of 2 to 100. Cost: O(readings). Sources: [montgomery-sqc] chapter 6 (variable
 * sample size), [iso-7870-2].
 *
 * @throws {MathsInputError} `pooled-spread-limits/too-few`, `pooled-spread-limits/not-finite`,
 *   `pooled-spread-limits/not-whole`
 *
 * @example
 * pooledSpreadLimits([[1, 2, 3], [2, 4]]).grandMean; // 2.4
 */
export function pooledSpreadLimits(subgroups: Subgroups): PooledSpreadLimits {
  checkSubgroups('pooledSpreadLimits', subgroups);
  const grandMean = mean(subgroups.flat());
  let squares = 0;
  let freedom = 0;
  for (const group of subgroups) {
    squares += (group.length - 1) * variance(group);
    freedom += group.length - 1;
  }
  const pooledSd = Math.sqrt(squares / freedom);
  return {
    grandMean,
    pooledSd,
    subgroups: subgroups.map(({ length: size }) => {
      const { A3, B3, B4 } = controlChartConstants(size);
      return {
        size,
        means: { low: grandMean - A3 * pooledSd, high: grandMean + A3 * pooledSd },
        spreads: { low: B3 * pooledSd, high: B4 * pooledSd },
      };
    }),
    trial: isTrial(subgroups.length),
  };
}
