import type { Chart, ChartArea } from 'chart.js';
import type { Palette } from './palette';

/** The face of every figure on a chart. */
export const figure = "'B612', sans-serif";

/** What a plugin draws with: the canvas, the plot, and where a turn and a height fall on it. */
export type Pen = {
  ctx: CanvasRenderingContext2D;
  area: ChartArea;
  x: (ordinal: number) => number;
  y: (height: number) => number;
  palette: Palette;
};

/** The pen of a chart as it now stands. */
export function penOf(chart: Chart<'scatter'>, palette: Palette): Pen {
  const { ctx, chartArea: area, scales } = chart;
  return {
    ctx,
    area,
    palette,
    x: (ordinal) => scales['x']!.getPixelForValue(ordinal),
    y: (height) => scales['y']!.getPixelForValue(height),
  };
}

/** A line through points, in pixels. */
export function stroke(
  { ctx }: Pen,
  colour: string,
  width: number,
  points: readonly (readonly [number, number])[],
  dash: number[] = [],
): void {
  ctx.save();
  ctx.strokeStyle = colour;
  ctx.lineWidth = width;
  ctx.setLineDash(dash);
  ctx.beginPath();
  points.forEach(([px, py], index) => (index === 0 ? ctx.moveTo(px, py) : ctx.lineTo(px, py)));
  ctx.stroke();
  ctx.restore();
}

/** Words at a place, in pixels. */
export function write(
  { ctx }: Pen,
  text: string,
  at: readonly [number, number],
  how: {
    colour: string;
    font: string;
    align?: CanvasTextAlign;
    baseline?: CanvasTextBaseline;
    /** Lies on what is drawn there, which stops short of it. */
    over?: string;
  },
): void {
  ctx.save();
  ctx.fillStyle = how.colour;
  ctx.font = `${how.font} ${figure}`;
  ctx.textAlign = how.align ?? 'left';
  ctx.textBaseline = how.baseline ?? 'middle';
  if (how.over !== undefined) {
    ctx.strokeStyle = how.over;
    ctx.lineWidth = 5;
    ctx.lineJoin = 'round';
    ctx.strokeText(text, at[0], at[1]);
  }
  ctx.fillText(text, at[0], at[1]);
  ctx.restore();
}
