import { stroke, type Pen } from './chart-pen';
import type { RunChartData } from './run-chart-data';

/** Where the drift meets a limit: a bar from the first likely piece to the last, a box at the best guess. */
export function drawCrossing(pen: Pen, { crossing }: RunChartData): void {
  if (crossing === null) return;
  const { ctx, area, palette } = pen;
  const py = pen.y(crossing.height);
  const [first, best, last] = [crossing.first, crossing.best, crossing.last].map(pen.x) as [
    number,
    number,
    number,
  ];
  if (first > area.right) return;
  stroke(pen, palette.warm, 5, [
    [first, py],
    [Math.min(last, area.right), py],
  ]);
  for (const end of last > area.right ? [first] : [first, last]) {
    stroke(pen, palette.warm, 3, [
      [end, py - 9],
      [end, py + 9],
    ]);
  }
  if (best <= area.right) {
    ctx.save();
    ctx.fillStyle = palette.sheet;
    ctx.strokeStyle = palette.warm;
    ctx.lineWidth = 2.5;
    ctx.fillRect(best - 5, py - 10, 10, 20);
    ctx.strokeRect(best - 5, py - 10, 10, 20);
    ctx.restore();
  }
}
