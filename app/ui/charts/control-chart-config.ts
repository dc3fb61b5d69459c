import type { ChartConfiguration, ScatterDataPoint } from 'chart.js';
import type { ControlPlotData } from './control-chart-data';
import { controlMarksPlugin } from './control-marks-plugin';
import { dotRadius } from './dot-radius';
import type { Palette } from './palette';

/** How far the plot reaches beyond its points and limits, as a share of its height. */
const air = 0.1;

/** Both ends of the upright scale: every point and every limit. */
export function controlHeightRange({ lines, limits }: ControlPlotData): {
  min: number;
  max: number;
} {
  let [low, high] = [Infinity, -Infinity];
  const cover = (height: number) => {
    low = Math.min(low, height);
    high = Math.max(high, height);
  };
  for (const line of lines) for (const { height } of line) cover(height);
  for (const stretch of limits) {
    for (const { lower, upper } of stretch) {
      cover(lower);
      cover(upper);
    }
  }
  if (low > high) return { min: -1, max: 1 };
  const pad = Math.max(0.2, (high - low) * air);
  return { min: low - pad, max: high + pad };
}

/** The chart.js configuration of one plot of a control chart: pure data in, configuration out. */
export function controlChartConfig(
  data: ControlPlotData,
  palette: Palette,
): ChartConfiguration<'scatter', ScatterDataPoint[]> {
  const points = data.lines.flat();
  const along = { min: 0.4, max: data.turns.end + 0.6 };
  const plain = { pointRadius: 0, pointHoverRadius: 0, pointHitRadius: 0, showLine: true };
  const limit = (name: 'lower' | 'centre' | 'upper', dash: number[]) =>
    data.limits.map((stretch) => ({
      label: `${name} limit`,
      data: stretch.map((at) => ({ x: at.ordinal, y: at[name] })),
      ...plain,
      borderColor: palette.ink,
      borderWidth: name === 'centre' ? 1.25 : 2,
      borderDash: dash,
    }));
  return {
    type: 'scatter',
    data: {
      datasets: [
        {
          label: 'points',
          data: points.filter(({ signal }) => !signal).map(placed),
          pointRadius: dotRadius(4, along),
          backgroundColor: palette.ink,
          borderColor: palette.ink,
          clip: false as const,
        },
        {
          // Told by its shape, and only then by its colour.
          label: 'signals',
          data: points.filter(({ signal }) => signal).map(placed),
          pointStyle: 'rectRot',
          pointRadius: 8,
          pointHoverRadius: 8,
          borderWidth: 2.5,
          backgroundColor: palette.sheet,
          borderColor: palette.warm,
          clip: false as const,
        },
        ...data.lines.map((line) => ({
          label: 'line',
          data: line.map(placed),
          ...plain,
          borderColor: palette.rule,
          borderWidth: 1.25,
        })),
        ...limit('upper', [8, 5]),
        ...limit('centre', [14, 4, 3, 4]),
        ...limit('lower', [8, 5]),
      ],
    },
    options: {
      animation: false,
      responsive: true,
      maintainAspectRatio: false,
      events: [],
      layout: { padding: { left: 4, top: 8, right: 84, bottom: 34 } },
      plugins: { legend: { display: false }, tooltip: { enabled: false } },
      scales: {
        x: { type: 'linear', ...along, display: false },
        y: {
          type: 'linear',
          ...controlHeightRange(data),
          display: false,
          afterFit: (scale) => (scale.width = 64),
        },
      },
    },
    plugins: [controlMarksPlugin(data, palette)],
  };
}

function placed({ ordinal, height }: { ordinal: number; height: number }): ScatterDataPoint {
  return { x: ordinal, y: height };
}
