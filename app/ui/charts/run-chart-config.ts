import type { ChartConfiguration, ScatterDataPoint } from 'chart.js';
import { dotRadius } from './dot-radius';
import type { Palette } from './palette';
import type { RunChartData } from './run-chart-data';
import { runMarksPlugin } from './run-marks-plugin';

/** How far the plot reaches beyond the limits and the band, as a share of its height. */
const air = 0.08;

/** Both ends of the upright scale, in steps from the nominal: limits, bars, and the line to the last piece. */
export function heightRange(data: RunChartData): { min: number; max: number } {
  const { points, lower, upper, line, batchEnd } = data;
  let [low, high] = [Infinity, -Infinity];
  const cover = (height: number) => {
    low = Math.min(low, height);
    high = Math.max(high, height);
  };
  for (const { height, doubt } of points) {
    cover(height - doubt);
    cover(height + doubt);
  }
  if (lower !== null) cover(lower.height);
  if (upper !== null) cover(upper.height);
  for (const at of line ?? []) {
    if (at.ordinal > batchEnd + 0.5) continue;
    cover(at.low);
    cover(at.high);
  }
  if (low > high) return { min: -1, max: 1 };
  const pad = Math.max(1, (high - low) * air);
  return { min: low - pad, max: high + pad };
}

/** The chart.js configuration of a run: pure data in, configuration out; nothing is drawn here. */
export function runChartConfig(
  data: RunChartData,
  palette: Palette,
): ChartConfiguration<'scatter', ScatterDataPoint[]> {
  const { points, line, lastMade, turns } = data;
  const at = (list: RunChartData['points']) =>
    list.map(({ ordinal, height }) => ({ x: ordinal, y: height }));
  const along = { min: 0.4, max: turns.end + (line === null ? 0.6 : 1.6) };
  const piece = { pointRadius: dotRadius(5.5, along), borderWidth: 2, clip: false as const };
  const lineOf = (part: NonNullable<RunChartData['line']>) =>
    part.map(({ ordinal, height }) => ({ x: ordinal, y: height }));
  const plain = { showLine: true, pointRadius: 0, pointHoverRadius: 0, pointHitRadius: 0 };
  const range = heightRange(data);
  return {
    type: 'scatter',
    data: {
      datasets: [
        {
          label: 'pieces before the last event',
          data: at(points.filter(({ earlier, last }) => earlier && !last)),
          ...piece,
          backgroundColor: palette.sheet,
          borderColor: palette.ink,
        },
        {
          label: 'pieces',
          data: at(points.filter(({ earlier, last }) => !earlier && !last)),
          ...piece,
          backgroundColor: palette.ink,
          borderColor: palette.ink,
        },
        {
          label: 'last piece',
          data: at(points.filter(({ last }) => last)),
          ...piece,
          pointRadius: dotRadius(7, along),
          backgroundColor: palette.blue,
          borderColor: palette.blue,
        },
        {
          label: 'drift line',
          data: lineOf((line ?? []).filter(({ ordinal }) => ordinal <= lastMade)),
          ...plain,
          borderColor: palette.ink,
          borderWidth: 2.5,
        },
        {
          label: 'drift line, forecast',
          data: lineOf((line ?? []).filter(({ ordinal }) => ordinal >= lastMade)),
          ...plain,
          borderColor: palette.ink,
          borderWidth: 2.5,
          borderDash: [9, 6],
        },
      ],
    },
    options: {
      animation: false,
      responsive: true,
      maintainAspectRatio: false,
      events: [],
      layout: { padding: { left: 4, top: 8, right: 84, bottom: 86 } },
      plugins: { legend: { display: false }, tooltip: { enabled: false } },
      scales: {
        x: {
          type: 'linear',
          ...along,
          display: false,
        },
        y: { type: 'linear', ...range, display: false, afterFit: (scale) => (scale.width = 64) },
      },
    },
    plugins: [runMarksPlugin(data, palette)],
  };
}
