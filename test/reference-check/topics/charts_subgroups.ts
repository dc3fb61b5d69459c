import type { Interval } from '@/lib/maths/control/interval';
import { meanRangeLimits } from '@/lib/maths/control/mean-range-limits';
import { meanSpreadLimits } from '@/lib/maths/control/mean-spread-limits';
import { pooledSpreadLimits } from '@/lib/maths/control/pooled-spread-limits';
import { mean } from '@/lib/maths/statistics/mean';
import { standardDeviation } from '@/lib/maths/statistics/standard-deviation';

export const topic = 'X-bar/R and X-bar/S charts';

export function answer(inputs: Record<string, unknown>): Record<string, unknown> {
  const dropped = Object.entries(inputs).flatMap(([name, value]) =>
    /drop|omit|exclu|remove|without|left_out/.test(name) ? (value as number[]) : [],
  );
  const all = inputs.subgroups as number[][];
  const subgroups = all.filter((_, i) => !dropped.includes(i + 1));
  const isEven = subgroups.every((group) => group.length === subgroups[0]!.length);
  return { ...unevenCharts(subgroups), ...(isEven ? evenCharts(subgroups) : {}) };
}

function evenCharts(subgroups: number[][]): Record<string, unknown> {
  const byRange = meanRangeLimits(subgroups);
  const bySpread = meanSpreadLimits(subgroups);
  const ranges = subgroups.map((group) => Math.max(...group) - Math.min(...group));
  return {
    k: byRange.count,
    n: byRange.size,
    grand_mean: byRange.grandMean,
    r_bar: byRange.rangeMean,
    s_bar: bySpread.spreadMean,
    sigma_from_r: byRange.sigma,
    sigma_from_s: bySpread.sigma,
    xbar_r: limits(byRange.means),
    r_chart: limits(byRange.ranges),
    xbar_s: limits(bySpread.means),
    s_chart: limits(bySpread.spreads),
    ranges,
    points_beyond_3sigma_xbar: outside(
      subgroups.map((group) => mean(group)),
      byRange.means,
    ),
    points_beyond_3sigma_r: outside(ranges, byRange.ranges),
  };
}

function unevenCharts(subgroups: number[][]): Record<string, unknown> {
  const pooled = pooledSpreadLimits(subgroups);
  return {
    grand_mean_weighted: pooled.grandMean,
    s_pooled: pooled.pooledSd,
    'limits_by_n (s_pooled, A3, B3, B4)': Object.fromEntries(
      pooled.subgroups.map(({ size, means, spreads }) => [
        size,
        {
          xbar_ucl: means.high,
          xbar_lcl: means.low,
          s_ucl: spreads.high,
          s_lcl: spreads.low,
        },
      ]),
    ),
    subgroup_s: subgroups.map((group) => standardDeviation(group)),
  };
}

function limits({ low, high }: Interval): Record<string, number> {
  return { ucl: high, lcl: low };
}

function outside(points: number[], { low, high }: Interval): number[] {
  return points.flatMap((point, i) => (point < low || point > high ? [i + 1] : []));
}
