import { cusumChart, type CusumChart } from '@/lib/maths/control/cusum-chart';
import { ewmaChart } from '@/lib/maths/control/ewma-chart';
import { mean } from '@/lib/maths/statistics/mean';
import { standardDeviation } from '@/lib/maths/statistics/standard-deviation';
import type { ChartSetting } from '@/lib/schema/chart-settings';
import type { ControlKind } from '@/lib/schema/run';
import type { ControlGroup } from './control-groups';
import type { ControlLimits } from './control-limits';

/** One plotted value with the limits that hold there, mm; off the nominal where it is a size. */
export type ControlPoint = {
  ordinal: number;
  mark: string;
  valueMm: number;
  centreMm: number;
  lowerMm: number;
  upperMm: number;
  /** Number of its stretch: what is joined stays within one. */
  stretch: number;
};

export type ControlTracks = {
  /** Pieces, means, weighted averages, or the upper sums. */
  main: ControlPoint[];
  /** The lower sums, drawn below nothing; null for all other charts. */
  low: ControlPoint[] | null;
  /** Moving ranges, ranges or s; null for averages and sums. */
  spread: ControlPoint[] | null;
  /** What each stretch's sums say, with the index of its first group; empty for all other charts. */
  sums: { first: number; chart: CusumChart }[];
};

/** What the averages and the sums are set to, thousandths; the other charts have nothing to set. */
type Settings = Readonly<Record<ChartSetting, number>>;

/** What a control chart plots, point for point: no point is made up, and what an event parts stays apart. */
export function controlTracks(
  control: Exclude<ControlKind, 'none'>,
  groups: readonly ControlGroup[],
  limits: ControlLimits,
  settings: Settings,
): ControlTracks {
  const nothing = { low: null, spread: null, sums: [] };
  switch (control) {
    case 'single pieces':
      return {
        ...nothing,
        main: groups.map((group) => plain(group, limits)),
        spread: movingRanges(groups, limits),
      };
    case 'mean and range':
    case 'mean and s':
      return {
        ...nothing,
        main: groups.map((group) => plain(group, limits)),
        spread: groups.map((group) => scatter(control, group, limits)),
      };
    case 'ewma':
      return { ...nothing, main: averages(groups, limits, settings) };
    case 'cusum':
      return sums(groups, limits, settings);
  }
}

function at({ to, mark, stretch }: ControlGroup) {
  return { ordinal: to, mark, stretch };
}

function meanOf({ values }: ControlGroup): number {
  return values.length === 1 ? values[0]! : mean(values);
}

function plain(group: ControlGroup, limits: ControlLimits): ControlPoint {
  const { low, high } = limits.main(group.values.length);
  return {
    ...at(group),
    valueMm: group.lineMm + meanOf(group),
    centreMm: group.lineMm + limits.centreMm,
    lowerMm: group.lineMm + low,
    upperMm: group.lineMm + high,
  };
}

function movingRanges(groups: readonly ControlGroup[], limits: ControlLimits): ControlPoint[] {
  return groups.flatMap((group, i) => {
    const before = groups[i - 1];
    if (before === undefined || before.stretch !== group.stretch) return [];
    const { centreMm, low, high } = limits.spread!(1);
    const valueMm = Math.abs(group.values[0]! - before.values[0]!);
    return [{ ...at(group), valueMm, centreMm, lowerMm: low, upperMm: high }];
  });
}

function scatter(control: ControlKind, group: ControlGroup, limits: ControlLimits): ControlPoint {
  const { values } = group;
  const { centreMm, low, high } = limits.spread!(values.length);
  const valueMm =
    control === 'mean and range'
      ? Math.max(...values) - Math.min(...values)
      : standardDeviation(values);
  return { ...at(group), valueMm, centreMm, lowerMm: low, upperMm: high };
}

/** The groups of each stretch, with the index of the first. */
function byStretch(groups: readonly ControlGroup[]): { first: number; own: ControlGroup[] }[] {
  const made: { first: number; own: ControlGroup[] }[] = [];
  groups.forEach((group, i) => {
    if (group.stretch !== groups[i - 1]?.stretch) made.push({ first: i, own: [] });
    made.at(-1)!.own.push(group);
  });
  return made;
}

function averages(
  groups: readonly ControlGroup[],
  limits: ControlLimits,
  { averageWeightMilli, averageWidthMilli }: Settings,
): ControlPoint[] {
  return byStretch(groups).flatMap(({ own }) => {
    const chart = ewmaChart({
      values: own.map(meanOf),
      lambda: averageWeightMilli / 1000,
      multiple: averageWidthMilli / 1000,
      centre: limits.centreMm,
      sigma: limits.sigmaOf(own[0]!.values.length),
      limits: 'from the start',
    });
    return own.map((group, i) => ({
      ...at(group),
      valueMm: group.lineMm + chart.averages[i]!,
      centreMm: group.lineMm + limits.centreMm,
      lowerMm: group.lineMm + chart.lower[i]!,
      upperMm: group.lineMm + chart.upper[i]!,
    }));
  });
}

function sums(
  groups: readonly ControlGroup[],
  limits: ControlLimits,
  { sumReferenceMilli, sumDecisionMilli }: Settings,
): ControlTracks {
  const main: ControlPoint[] = [];
  const low: ControlPoint[] = [];
  const found: ControlTracks['sums'] = [];
  for (const { first, own } of byStretch(groups)) {
    const sigma = limits.sigmaOf(own[0]!.values.length);
    const decision = (sumDecisionMilli / 1000) * sigma;
    const chart = cusumChart({
      values: own.map(meanOf),
      target: limits.centreMm,
      slack: (sumReferenceMilli / 1000) * sigma,
      decision,
    });
    const ends = { centreMm: 0, lowerMm: -decision, upperMm: decision };
    own.forEach((group, i) => {
      main.push({ ...at(group), ...ends, valueMm: chart.high[i]! });
      low.push({ ...at(group), ...ends, valueMm: 0 - chart.low[i]! });
    });
    found.push({ first, chart });
  }
  return { main, low, spread: null, sums: found };
}
