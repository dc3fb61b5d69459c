import type { Chart, Plugin } from 'chart.js';
import type { MarkedDataset } from './closer-chart-config';
import { tickStep } from './tick-step';

const figure = "'B612', sans-serif";

/** Draws the limits, the scales and the events of a stretch of a run. One object for all charts: it keeps nothing. */
export const closerMarksPlugin: Plugin<'scatter'> = {
  id: 'closer-marks',
  beforeDatasetsDraw(chart) {
    const { data, palette } = marksOf(chart);
    const { ctx, chartArea: area } = chart;
    const y = (height: number) => chart.scales['y']!.getPixelForValue(height);
    const x = (ordinal: number) => chart.scales['x']!.getPixelForValue(ordinal);
    const clamp = (py: number) => Math.min(Math.max(py, area.top), area.bottom);
    if (data.lower !== null || data.upper !== null) {
      const top = data.upper === null ? area.top : clamp(y(data.upper.height));
      const bottom = data.lower === null ? area.bottom : clamp(y(data.lower.height));
      ctx.save();
      ctx.globalAlpha = 0.5;
      ctx.fillStyle = palette.band;
      ctx.fillRect(area.left, top, area.right - area.left, bottom - top);
      ctx.restore();
    }
    for (const [limit, name] of [
      [data.upper, 'Upper'],
      [data.lower, 'Lower'],
    ] as const) {
      if (limit === null) continue;
      const py = y(limit.height);
      stroke(ctx, palette.ink, 2.5, [area.left, py], [area.right, py]);
      write(ctx, name, [area.right + 8, py - 6], palette.ink, '14px', 'left');
      write(ctx, limit.label, [area.right + 8, py + 11], palette.ink, '700 14px', 'left');
    }
    for (const { ordinal } of data.events) {
      ctx.save();
      ctx.setLineDash([2, 4]);
      stroke(ctx, palette.rule, 1.25, [x(ordinal), area.top], [x(ordinal), area.bottom]);
      ctx.restore();
    }
  },
  afterDatasetsDraw(chart) {
    const { data, palette } = marksOf(chart);
    const { ctx, chartArea: area } = chart;
    const y = (height: number) => chart.scales['y']!.getPixelForValue(height);
    const x = (ordinal: number) => chart.scales['x']!.getPixelForValue(ordinal);
    stroke(ctx, palette.ink, 1.5, [area.left, area.top], [area.left, area.bottom]);
    stroke(ctx, palette.ink, 1.5, [area.left, area.bottom], [area.right, area.bottom]);
    const perStep = Math.abs(y(1) - y(0));
    const major = tickStep(44 / perStep, 1);
    const { min, max } = data.range;
    for (let n = Math.ceil(min / major); n * major <= max; n += 1) {
      const height = n * major;
      stroke(ctx, palette.ink, 1.5, [area.left - 8, y(height)], [area.left, y(height)]);
      const sign = height > 0 ? '+' : height < 0 ? '\u2212' : '';
      const text = `${sign}${Math.abs(height)}`;
      write(ctx, text, [area.left - 12, y(height)], palette.ink, '14px', 'right');
    }
    const perPiece = (area.right - area.left) / (data.window.to - data.window.from);
    const every = tickStep(70 / perPiece, 1);
    for (let n = Math.ceil(data.window.from / every); n * every <= data.window.to; n += 1) {
      const ordinal = n * every;
      if (ordinal < 1) continue;
      stroke(ctx, palette.ink, 1.5, [x(ordinal), area.bottom], [x(ordinal), area.bottom + 8]);
      const text = String(ordinal).replace(/\B(?=(\d{3})+$)/g, '\u202f');
      write(ctx, text, [x(ordinal), area.bottom + 20], palette.ink, '14px', 'center');
    }
    let free = -Infinity;
    for (const { ordinal, title } of data.events) {
      ctx.font = `700 13px ${figure}`;
      const half = ctx.measureText(title).width / 2;
      if (x(ordinal) - half < free + 8) continue;
      free = x(ordinal) + half;
      write(ctx, title, [x(ordinal), area.bottom + 40], palette.ink, '700 13px', 'center');
    }
  },
};

function marksOf(chart: Chart<'scatter'>): MarkedDataset['marks'] {
  return (chart.data.datasets[0] as MarkedDataset).marks;
}

function stroke(
  ctx: CanvasRenderingContext2D,
  colour: string,
  width: number,
  from: readonly [number, number],
  to: readonly [number, number],
): void {
  ctx.strokeStyle = colour;
  ctx.lineWidth = width;
  ctx.beginPath();
  ctx.moveTo(...from);
  ctx.lineTo(...to);
  ctx.stroke();
}

function write(
  ctx: CanvasRenderingContext2D,
  text: string,
  at: readonly [number, number],
  colour: string,
  font: string,
  align: CanvasTextAlign,
): void {
  ctx.fillStyle = colour;
  ctx.font = `${font} ${figure}`;
  ctx.textAlign = align;
  ctx.textBaseline = 'middle';
  ctx.fillText(text, ...at);
}
