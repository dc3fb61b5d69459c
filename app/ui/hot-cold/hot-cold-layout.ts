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

/** Left free above what is drawn, px: a line of words; and below it, for the ring. */
const room = { above: 34, below: 14 };

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
  const spanX = padded(temperatures, { low: 0.03, high: 0.03 }, 1);
  const left = plot.bottom - plot.top - room.above - room.below;
  const spanY = padded(heights, { low: room.below / left, high: room.above / left }, 1_000_000);
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
    // Above everything drawn, where no line can run through it; the ring says which point it is.
    tightLabel: {
      x: plot.right - 2,
      y: plot.top + 16,
      text: `tightest, ${hotClearance(tightPm, shown)}`,
      anchor: 'end',
    },
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

function padded(
  values: readonly number[],
  share: { low: number; high: number },
  least: number,
): { low: number; high: number } {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const pad = (part: number) => Math.max((high - low) * part, least);
  return { low: low - pad(share.low), high: high + pad(share.high) };
}

function steps({ low, high }: { low: number; high: number }, least: number, unit: number) {
  const step = tickStep(least, unit);
  const found: number[] = [];
  for (let at = Math.ceil(low / step) * step; at <= high; at += step) found.push(at === 0 ? 0 : at);
  return found;
}
