import type { HotCold } from '@/lib/rules/heat/hot-cold';
import { clearanceFigure } from '@/lib/text/fit-words';
import { hotClearance, temperatureFigure } from '@/lib/text/heat-words';
import type { Shown } from '@/lib/text/shown-size';
import { tickStep } from '../charts/tick-step';

type Point = { x: number; y: number };
type Label = Point & { text: string; anchor: 'start' | 'middle' | 'end' };

/** Where everything of the chart stands, px. */
export type HotColdLayout = {
  width: number;
  height: number;
  plot: { left: number; right: number; top: number; bottom: number };
  /** Between the least and the most of the fit. */
  band: { top: number; bottom: number };
  /** Where the two touch; null while it is off the chart. */
  touching: number | null;
  ticksX: (Label & { y: number })[];
  ticksY: Label[];
  /** Both pieces at one temperature. */
  soaked: Point[];
  /** The inner piece warming or cooling while the outer stays. */
  apart: [Point, Point];
  bad: Point;
  tight: Point;
  tightLabel: Label;
};

/** The tightest part of the chart is told by a number as well: this is how far its label stands off. */
const off = 10;

/** Left free above and below everything drawn, px: a line of words. */
const room = 32;

/**
 * Lays out clearance (upright) against the temperature of the inner piece (across). Pure.
 *
 * The whole line of both pieces soaked, and the one along which the inner piece leaves it, are in the span;
 * so are the limits of the fit, and nothing is drawn outside.
 */
export function hotColdLayout(
  hot: HotCold,
  fit: { minPm: number; maxPm: number },
  shown: Shown,
  { width, height }: { width: number; height: number },
): HotColdLayout {
  const plot = { left: 64, right: width - 16, top: 14, bottom: height - 46 };
  const start = soakedAt(hot, hot.bad.outerC);
  const temperatures = [
    ...hot.soaked.map(({ temperatureC }) => temperatureC),
    hot.bad.innerC,
    hot.bad.outerC,
  ];
  const heights = [
    ...hot.soaked.map(({ clearancePm }) => clearancePm),
    hot.bad.clearancePm,
    start,
    fit.minPm,
    fit.maxPm,
  ];
  const spanX = padded(temperatures, 0.03, 1);
  const spanY = padded(heights, room / (plot.bottom - plot.top - 2 * room), 1_000_000);
  const x = (c: number) =>
    plot.left + ((c - spanX.low) / (spanX.high - spanX.low)) * (plot.right - plot.left);
  const y = (pm: number) =>
    plot.bottom - ((pm - spanY.low) / (spanY.high - spanY.low)) * (plot.bottom - plot.top);
  const bad = { x: x(hot.bad.innerC), y: y(hot.bad.clearancePm) };
  const { tightestSoaked } = hot;
  const tight =
    hot.tight === 'bad'
      ? bad
      : { x: x(tightestSoaked.temperatureC), y: y(tightestSoaked.clearancePm) };
  const tightPm = hot.tight === 'bad' ? hot.bad.clearancePm : tightestSoaked.clearancePm;
  return {
    width,
    height,
    plot,
    band: { top: y(fit.maxPm), bottom: y(fit.minPm) },
    touching: spanY.low < 0 && spanY.high > 0 ? y(0) : null,
    ticksX: steps(spanX, ((spanX.high - spanX.low) * 64) / (plot.right - plot.left), 1).map(
      (c) => ({
        x: x(c),
        y: plot.bottom + 22,
        text: temperatureFigure(c, shown),
        anchor: 'middle',
      }),
    ),
    ticksY: steps(
      spanY,
      ((spanY.high - spanY.low) * 30) / (plot.bottom - plot.top),
      shown.unit === 'mm' ? 1_000_000 : 2_540_000,
    ).map((pm) => ({
      x: plot.left - 8,
      y: y(pm) + 4,
      text: clearanceFigure(pm, shown),
      anchor: 'end',
    })),
    soaked: hot.soaked.map((one) => ({ x: x(one.temperatureC), y: y(one.clearancePm) })),
    apart: [{ x: x(hot.bad.outerC), y: y(start) }, bad],
    bad,
    tight,
    tightLabel: labelOf(tight, `tightest, ${hotClearance(tightPm, shown)}`, plot),
  };
}

/** The clearance with both at this temperature, along the straight line of the soaked range. */
function soakedAt({ soaked }: HotCold, temperatureC: number): number {
  const [first, last] = [soaked[0]!, soaked.at(-1)!];
  const span = last.temperatureC - first.temperatureC;
  if (span === 0) return first.clearancePm;
  const share = (temperatureC - first.temperatureC) / span;
  return Math.round(first.clearancePm + share * (last.clearancePm - first.clearancePm));
}

function labelOf(at: Point, text: string, plot: HotColdLayout['plot']): Label {
  const middle = (plot.left + plot.right) / 2;
  const below = at.y + off + 16 < plot.bottom;
  const y = below ? at.y + off + 14 : at.y - off - 4;
  return at.x > middle
    ? { x: Math.min(at.x + off, plot.right - 4), y, text, anchor: 'end' }
    : { x: Math.max(at.x - off, plot.left + 4), y, text, anchor: 'start' };
}

function padded(values: readonly number[], share: number, least: number) {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const pad = Math.max((high - low) * share, least);
  return { low: low - pad, high: high + pad };
}

function steps({ low, high }: { low: number; high: number }, least: number, unit: number) {
  const step = tickStep(least, unit);
  const found: number[] = [];
  for (let at = Math.ceil(low / step) * step; at <= high; at += step) found.push(at === 0 ? 0 : at);
  return found;
}
