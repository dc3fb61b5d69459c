import { requireAtLeast, requireFinite, requireNotNegative, requirePositive } from './guards';

export type CusumInput = {
  /** Readings, or means of subgroups, in the order made. */
  values: readonly number[];
  /** Size aimed at, same unit. */
  target: number;
  /** Slack K, usually half the shift to be found, same unit. */
  slack: number;
  /** Decision interval H, often four or five sigma, same unit. */
  decision: number;
  /** Start both sums at H/2, to find a run that begins wrong sooner. */
  headStart?: boolean;
};

export type CusumSignal = {
  /** Index (from 0) of the first value at which a sum is above H. */
  index: number;
  side: 'upper' | 'lower';
  /** Index of the value with which the change is thought to have begun. */
  beganAt: number;
  /** Where the mean is thought to have gone: T + K + C+/N+ or T - K - C-/N-. */
  meanNow: number;
};

export type CusumChart = {
  /** Upper and lower sums, never below 0, one for each value. */
  high: number[];
  low: number[];
  /** Values since each sum was last 0. */
  highCount: number[];
  lowCount: number[];
  /** Left out when neither sum passes H. */
  signal?: CusumSignal;
};

/**
 * Tabular cumulative sums above and below a target.
 *
 *     C+_i = max(0, x_i - (T + K) + C+_(i-1)),  C-_i = max(0, (T - K) - x_i + C-_(i-1))
 *
 * Both start at 0, or at H/2 with a head start. A signal is the first sum strictly above H. Sums go on
 * after a signal; start the chart again once the cause is mended.
 *
 * Limits: independent values. Cost: O(n). Sources: [iso-7870-4], [montgomery-sqc] chapter 9.
 *
 * @throws {MathsInputError} `cusum-chart/too-few`, `cusum-chart/not-finite`, `cusum-chart/negative`,
 *   `cusum-chart/not-positive`
 *
 * @example
 * cusumChart({ values: [10, 12, 13], target: 10, slack: 0.5, decision: 3 }).high; // [0, 1.5, 4]
 */
export function cusumChart(input: CusumInput): CusumChart {
  const { values, target, slack, decision, headStart = false } = input;
  requireAtLeast('cusumChart', 'values', values.length, 1);
  requireFinite('cusumChart', 'values', values);
  requireFinite('cusumChart', 'target', [target]);
  requireNotNegative('cusumChart', 'slack', slack);
  requirePositive('cusumChart', 'decision interval', decision);

  const chart: CusumChart = { high: [], low: [], highCount: [], lowCount: [] };
  const start = headStart ? decision / 2 : 0;
  let [high, low, highCount, lowCount] = [start, start, 0, 0];
  values.forEach((value, index) => {
    const off = value - target;
    high = Math.max(0, off - slack + high);
    low = Math.max(0, -off - slack + low);
    highCount = high > 0 ? highCount + 1 : 0;
    lowCount = low > 0 ? lowCount + 1 : 0;
    chart.high.push(high);
    chart.low.push(low);
    chart.highCount.push(highCount);
    chart.lowCount.push(lowCount);
    if (chart.signal === undefined && Math.max(high, low) > decision) {
      chart.signal =
        high >= low
          ? {
              index,
              side: 'upper',
              beganAt: index - highCount + 1,
              meanNow: target + slack + high / highCount,
            }
          : {
              index,
              side: 'lower',
              beganAt: index - lowCount + 1,
              meanNow: target - slack - low / lowCount,
            };
    }
  });
  return chart;
}
