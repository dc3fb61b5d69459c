import { mean } from '../statistics/mean';
import type { Subgroups } from './check-subgroups';
import { controlChartConstants } from './control-chart-constants';
import { evenSubgroups } from './even-subgroups';
import type { Interval } from './interval';
import { isTrial } from './is-trial';

export type MeanRangeLimits = {
  /** Number of subgroups, and readings in each. */
  count: number;
  size: number;
  grandMean: number;
  rangeMean: number;
  /** rangeMean / d2. */
  sigma: number;
  means: Interval;
  ranges: Interval;
  /** Fewer than twenty subgroups: the limits may still move a good deal. */
  trial: boolean;
};

/**
 * Limits of a mean chart and a range chart, from subgroups of one size.
 *
 *     means: grand mean +- A2 Rb;  ranges: D3 Rb to D4 Rb;  sigma = Rb / d2
 *
 * Limits: subgroups of 2 to 100, best of ten or fewer (a range wastes larger ones). Cost: O(readings).
 * Sources: [iso-7870-2], [montgomery-runger] chapter 16.
 *
 * @throws {MathsInputError} `mean-range-limits/too-few`, `mean-range-limits/uneven`,
 *   `mean-range-limits/not-finite`, `mean-range-limits/not-whole`
 *
 * @example
 * meanRangeLimits([[33, 29, 31], [35, 33, 34]]).rangeMean; // 3
 */
export function meanRangeLimits(subgroups: Subgroups): MeanRangeLimits {
  const size = evenSubgroups('meanRangeLimits', subgroups);
  const { A2, D3, D4, d2 } = controlChartConstants(size);
  const grandMean = mean(subgroups.map((group) => mean(group)));
  const rangeMean = mean(subgroups.map((group) => Math.max(...group) - Math.min(...group)));
  return {
    count: subgroups.length,
    size,
    grandMean,
    rangeMean,
    sigma: rangeMean / d2,
    means: { low: grandMean - A2 * rangeMean, high: grandMean + A2 * rangeMean },
    ranges: { low: D3 * rangeMean, high: D4 * rangeMean },
    trial: isTrial(subgroups.length),
  };
}
