import { mean } from '../statistics/mean';
import { median } from '../statistics/median';
import { controlChartConstants } from './control-chart-constants';
import { refuse, requireAtLeast, requireEvents, requireFinite } from './guards';
import { isTrial } from './is-trial';
import { medianMovingRangeFactor } from './median-moving-range-factor';

export type IndividualsInput = {
  /** Readings in the order made, any one unit. */
  values: readonly number[];
  /** Index (from 0) of each value made just after an event; no range is taken into it. */
  eventsBefore?: readonly number[];
  /** What sigma comes from; the mean unless said. The median is for runs with a few wild jumps. */
  sigmaFrom?: 'mean moving range' | 'median moving range';
};

export type IndividualsLimits = {
  mean: number;
  /** Mean of the moving ranges of two. */
  movingRangeMean: number;
  /** How many ranges there were: values less one, less the events between them. */
  movingRangeCount: number;
  sigma: number;
  lower: number;
  upper: number;
  /** Limit of the moving ranges; their lower limit is 0. */
  movingRangeUpper: number;
  /** Fewer than twenty values: the limits may still move a good deal. */
  trial: boolean;
};

/**
 * Limits of a chart of single pieces and of their moving ranges.
 *
 *     MR_i = |x_i - x_(i-1)|, not across an event;  sigma = mean MR / d2(2)
 *     limits mean +- 3 sigma;  upper limit of MR = D4(2) d2(2) sigma, lower 0
 *
 * With `median moving range` sigma = median MR / 0.953873. Constants are unrounded, so limits differ
 * in the fourth digit from those worked with 1.128.
 *
 * Limits: independent pieces; a drifting run has limits that mean little. A sigma of 0 (all ranges 0)
 * is returned as it is. Cost: O(n). Sources: [iso-7870-2],
 * [nist-handbook] 6.3.2.2.
 *
 * @throws {MathsInputError} `individuals-limits/too-few`, `individuals-limits/not-finite`,
 *   `individuals-limits/events`, `individuals-limits/no-range`
 *
 * @example
 * individualsLimits({ values: [49.6, 47.6, 49.9, 51.3, 47.8] }).upper; // ~ 55.61
 */
export function individualsLimits(input: IndividualsInput): IndividualsLimits {
  const { values, eventsBefore = [], sigmaFrom = 'mean moving range' } = input;
  requireAtLeast('individualsLimits', 'values', values.length, 2);
  requireFinite('individualsLimits', 'values', values);
  requireEvents('individualsLimits', eventsBefore, values.length);

  const ranges = movingRanges(values, new Set(eventsBefore));
  if (ranges.length === 0) {
    const got = `events before all of ${values.length} values`;
    throw refuse('individualsLimits', 'no-range', `two values with no event between, got ${got}`);
  }
  const { d2, D4 } = controlChartConstants(2);
  const movingRangeMean = mean(ranges);
  const sigma =
    sigmaFrom === 'median moving range'
      ? median(ranges) / medianMovingRangeFactor()
      : movingRangeMean / d2;
  const centre = mean(values);
  return {
    mean: centre,
    movingRangeMean,
    movingRangeCount: ranges.length,
    sigma,
    lower: centre - 3 * sigma,
    upper: centre + 3 * sigma,
    movingRangeUpper: D4 * d2 * sigma,
    trial: isTrial(values.length),
  };
}

function movingRanges(values: readonly number[], eventsBefore: ReadonlySet<number>): Float64Array {
  const ranges = new Float64Array(values.length - 1);
  let count = 0;
  for (let i = 1; i < values.length; i += 1) {
    if (eventsBefore.size > 0 && eventsBefore.has(i)) continue;
    ranges[count] = Math.abs(values[i]! - values[i - 1]!);
    count += 1;
  }
  return ranges.subarray(0, count);
}
