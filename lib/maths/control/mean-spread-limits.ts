import { mean } from '../statistics/mean';
import { standardDeviation } from '../statistics/standard-deviation';
import type { Subgroups } from './check-subgroups';
import { controlChartConstants } from './control-chart-constants';
import { evenSubgroups } from './even-subgroups';
import type { Interval } from './interval';
import { isTrial } from './is-trial';

export type MeanSpreadLimits = {
  /** Number of subgroups, and readings in each. */
  count: number;
  size: number;
  grandMean: number;
  /** Mean of the subgroups' standard deviations. */
  spreadMean: number;
  /** spreadMean / c4. */
  sigma: number;
  means: Interval;
  spreads: Interval;
  /** Fewer than twenty subgroups: the limits may still move a good deal. */
  trial: boolean;
};

/**
 * Limits of a mean chart and an s chart, from subgroups of one size.
 *
 *     means: grand mean +- A3 sb;  s: B3 sb to B4 sb;  sigma = sb / c4
 *
 * Limits: subgroups of 2 to 100. For sizes that differ use `pooledSpreadLimits`. Cost: O(readings).
 * Sources: [iso-7870-2], [montgomery-sqc] chapter 6.
 *
 * @throws {MathsInputError} `mean-spread-limits/too-few`, `mean-spread-limits/uneven`,
 *   `mean-spread-limits/not-finite`, `mean-spread-limits/not-whole`
 *
 * @example
 * meanSpreadLimits([[33, 29, 31], [35, 33, 34]]).spreadMean; // 1.5
 */
export function meanSpreadLimits(subgroups: Subgroups): MeanSpreadLimits {
  const size = evenSubgroups('meanSpreadLimits', subgroups);
  const { A3, B3, B4, c4 } = controlChartConstants(size);
  const grandMean = mean(subgroups.map((group) => mean(group)));
  const spreadMean = mean(subgroups.map((group) => standardDeviation(group)));
  return {
    count: subgroups.length,
    size,
    grandMean,
    spreadMean,
    sigma: spreadMean / c4,
    means: { low: grandMean - A3 * spreadMean, high: grandMean + A3 * spreadMean },
    spreads: { low: B3 * spreadMean, high: B4 * spreadMean },
    trial: isTrial(subgroups.length),
  };
}
