import { individualsLimits } from '@/lib/maths/control/individuals-limits';
import { meanRangeLimits } from '@/lib/maths/control/mean-range-limits';
import { meanSpreadLimits } from '@/lib/maths/control/mean-spread-limits';
import { pooledSpreadLimits } from '@/lib/maths/control/pooled-spread-limits';
import { controlChartConstants } from '@/lib/maths/control/control-chart-constants';
import type { Interval } from '@/lib/maths/control/interval';
import type { ControlKind } from '@/lib/schema/run';
import type { ControlGroup } from './control-groups';

/** What a control chart is drawn with, mm, in the terms in which its groups are judged. */
export type ControlLimits = {
  centreMm: number;
  /** Standard deviation of a single piece (or reading), by the ranges or the s within groups. */
  sigmaMm: number;
  /** Limits of a plotted value that n pieces or readings make. */
  main: (n: number) => Interval;
  /** Standard deviation of such a value. */
  sigmaOf: (n: number) => number;
  /** The chart of the scatter under it: moving ranges, ranges or s; null for averages and sums. */
  spread: ((n: number) => { centreMm: number } & Interval) | null;
};

/**
 * The limits of a control chart from the groups it is based on; null where no range can be taken.
 *
 * Single pieces: mean and moving ranges, none taken over an event. Groups: mean and mean range, or mean
 * and s; the pooled s where the groups differ in size. By `individualsLimits`, `meanRangeLimits`,
 * `meanSpreadLimits`, `pooledSpreadLimits`.
 */
export function controlLimits(
  control: Exclude<ControlKind, 'none'>,
  base: readonly ControlGroup[],
): ControlLimits | null {
  const groups = base.map(({ values }) => values);
  if (groups.every(({ length }) => length === 1)) return ofSingles(control, base);
  if (control !== 'mean and s') {
    const { grandMean, rangeMean, sigma, ranges, means, size } = meanRangeLimits(groups);
    return {
      centreMm: grandMean,
      sigmaMm: sigma,
      main: (n) => (n === size ? means : around(grandMean, sigma / Math.sqrt(n))),
      sigmaOf: (n) => sigma / Math.sqrt(n),
      spread: control === 'mean and range' ? () => ({ centreMm: rangeMean, ...ranges }) : null,
    };
  }
  const size = groups[0]!.length;
  if (groups.every(({ length }) => length === size)) {
    const { grandMean, sigma } = meanSpreadLimits(groups);
    return {
      centreMm: grandMean,
      sigmaMm: sigma,
      main: (n) => around(grandMean, sigma / Math.sqrt(n)),
      sigmaOf: (n) => sigma / Math.sqrt(n),
      spread: (n) => {
        const { c4, B5, B6 } = controlChartConstants(n);
        return { centreMm: c4 * sigma, low: B5 * sigma, high: B6 * sigma };
      },
    };
  }
  const { grandMean, pooledSd } = pooledSpreadLimits(groups);
  const sigmaOf = (n: number) => (controlChartConstants(n).A3 * pooledSd) / 3;
  return {
    centreMm: grandMean,
    sigmaMm: pooledSd,
    main: (n) => around(grandMean, sigmaOf(n)),
    sigmaOf,
    spread: (n) => {
      const { B3, B4 } = controlChartConstants(n);
      return { centreMm: pooledSd, low: B3 * pooledSd, high: B4 * pooledSd };
    },
  };
}

function ofSingles(control: ControlKind, base: readonly ControlGroup[]): ControlLimits | null {
  const eventsBefore = base.flatMap(({ stretch }, i) =>
    i > 0 && stretch !== base[i - 1]!.stretch ? [i] : [],
  );
  if (base.length < 2 || eventsBefore.length >= base.length - 1) return null;
  const found = individualsLimits({ values: base.map(({ values }) => values[0]!), eventsBefore });
  return {
    centreMm: found.mean,
    sigmaMm: found.sigma,
    main: () => ({ low: found.lower, high: found.upper }),
    sigmaOf: () => found.sigma,
    spread:
      control === 'single pieces'
        ? () => ({ centreMm: found.movingRangeMean, low: 0, high: found.movingRangeUpper })
        : null,
  };
}

function around(centre: number, sigma: number): Interval {
  return { low: centre - 3 * sigma, high: centre + 3 * sigma };
}
