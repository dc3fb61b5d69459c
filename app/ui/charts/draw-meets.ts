import { figure, stroke, write, type Pen } from './chart-pen';
import type { RunChartData } from './run-chart-data';

/** Says where the drift meets a limit: beside the crossing, else where the plot has room. Drawn before the pieces. */
export function drawMeets(pen: Pen, data: RunChartData): void {
  const { crossing } = data;
  if (crossing === null) return;
  const { ctx, area, palette } = pen;
  const [first, py] = [pen.x(crossing.first), pen.y(crossing.height)];
  // It lies beyond the plot: said at its end, inside the limit.
  if (first > area.right) {
    const at = crossing.side === 'upper' ? { top: py + 5 } : { bottom: py - 5 };
    writeAtRight(pen, crossing.words, at);
    return;
  }
  ctx.font = `700 16px ${figure}`;
  const width = ctx.measureText(crossing.words).width;
  if (width > first - 20 - area.left) {
    drawMeetsInCorner(pen, data);
    return;
  }
  const right = Math.max(area.left + width, Math.min(first - 16, area.right));
  // Beyond the limit where the plot has room for it, else inside.
  const isUpper = crossing.side === 'upper';
  const isRoom = (isUpper ? py - area.top : area.bottom - py) > 70;
  const wordsY = isUpper === isRoom ? py - 60 : py + 60;
  write(pen, crossing.words, [right, wordsY], {
    colour: palette.warm,
    font: '700 16px',
    align: 'right',
    over: palette.sheet,
  });
  stroke(pen, palette.warm, 1.5, [
    [right - 20, wordsY + (wordsY < py ? 12 : -12)],
    [first + 6, py + (wordsY < py ? -10 : 10)],
  ]);
}

/** No room beside it: the words stand inside the far limit, in the corner the line does not cross. */
function drawMeetsInCorner(pen: Pen, { crossing, lower, upper }: RunChartData): void {
  if (crossing === null) return;
  const { area } = pen;
  const within = (limit: RunChartData['upper'], edge: number) =>
    limit === null ? edge : Math.min(area.bottom, Math.max(area.top, pen.y(limit.height)));
  if (crossing.side === 'upper') {
    writeAtRight(pen, crossing.apart, { bottom: within(lower, area.bottom) - 5 });
  } else {
    writeAtRight(pen, crossing.apart, { top: within(upper, area.top) + 5 });
  }
}

/** At the right end of the plot, on two lines where it is too wide for one. */
function writeAtRight(pen: Pen, words: string, at: { top: number } | { bottom: number }): void {
  const { ctx, area, palette } = pen;
  ctx.font = `700 14px ${figure}`;
  const isWide = ctx.measureText(words).width > area.right - area.left - 12;
  const lines = isWide ? words.split(/(?<=limit,?) /) : [words];
  const top = 'top' in at ? at.top : at.bottom - linePx * lines.length;
  lines.forEach((text, i) =>
    write(pen, text, [area.right - 6, top + linePx * (i + 0.5)], {
      colour: palette.warm,
      font: '700 14px',
      align: 'right',
      over: palette.sheet,
    }),
  );
}

const linePx = 18;
