import type { ChartConfiguration, ChartDataset, ScatterDataPoint } from 'chart.js';
import type { CloserChartData } from './closer-chart-data';
import { closerMarksPlugin } from './closer-marks-plugin';
import type { Palette } from './palette';

/** The first dataset carries what the plugin draws: a chart keeps its plugin and is given new data. */
export type MarkedDataset = ChartDataset<'scatter', ScatterDataPoint[]> & {
  marks: { data: CloserChartData; palette: Palette };
};

/** The chart.js configuration of a stretch of a run: figures in, configuration out. */
export function closerChartConfig(
  data: CloserChartData,
  palette: Palette,
): ChartConfiguration<'scatter', ScatterDataPoint[]> {
  const { points, dense, window, range } = data;
  const radius = dense ? 0 : points.length > 200 ? 2.5 : 4.5;
  const inside: MarkedDataset = {
    label: 'pieces',
    marks: { data, palette },
    data: withGaps(data),
    showLine: dense,
    borderColor: palette.ink,
    borderWidth: dense ? 1 : 0,
    backgroundColor: palette.ink,
    pointRadius: radius,
    pointHoverRadius: radius,
    pointHitRadius: 0,
    spanGaps: false,
  };
  return {
    type: 'scatter',
    data: {
      datasets: [
        inside,
        {
          label: 'pieces outside the limits',
          data: points
            .filter(({ outside }) => outside)
            .map(({ ordinal, height }) => ({ x: ordinal, y: height })),
          pointStyle: 'rectRot',
          pointRadius: dense ? 3 : 6,
          pointHoverRadius: dense ? 3 : 6,
          pointHitRadius: 0,
          backgroundColor: palette.warm,
          borderColor: palette.warm,
        },
      ],
    },
    options: {
      animation: false,
      responsive: true,
      maintainAspectRatio: false,
      normalized: true,
      events: [],
      layout: { padding: { left: 4, top: 8, right: 84, bottom: 56 } },
      plugins: { legend: { display: false }, tooltip: { enabled: false } },
      scales: {
        x: { type: 'linear', min: window.from, max: window.to, display: false },
        y: { type: 'linear', ...range, display: false, afterFit: (scale) => (scale.width = 64) },
      },
    },
    plugins: [closerMarksPlugin],
  };
}

/** A piece nobody measured leaves the line open. */
function withGaps({ points, gap, dense }: CloserChartData): ScatterDataPoint[] {
  if (!dense) return points.map(({ ordinal, height }) => ({ x: ordinal, y: height }));
  return points.flatMap(({ ordinal, height }, i) => {
    const point = { x: ordinal, y: height };
    const before = points[i - 1];
    return before !== undefined && ordinal - before.ordinal > gap
      ? [{ x: before.ordinal, y: NaN }, point]
      : [point];
  });
}
