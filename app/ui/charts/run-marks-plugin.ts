import type { Chart, ChartArea, Plugin } from 'chart.js';
import type { Palette } from './palette';
import type { RunChartData } from './run-chart-data';
import { tickStep } from './tick-step';

const figure = "'B612', sans-serif";

type Pen = {
  ctx: CanvasRenderingContext2D;
  area: ChartArea;
  x: (ordinal: number) => number;
  y: (height: number) => number;
  palette: Palette;
};

/** Draws what chart.js has no word for: limits, ticks, bars, the hatched band, events, the crossing. */
export function runMarksPlugin(data: RunChartData, palette: Palette): Plugin<'scatter'> {
  return {
    id: 'run-marks',
    beforeDatasetsDraw(chart) {
      const pen = penOf(chart, palette);
      drawZone(pen, data);
      drawDriftBand(pen, data);
      drawEvents(pen, data);
      drawLimits(pen, data);
      drawBars(pen, data);
    },
    afterDatasetsDraw(chart) {
      const pen = penOf(chart, palette);
      drawAxes(pen, data);
      drawCrossing(pen, data);
      drawLastLabel(pen, data);
    },
  };
}

function penOf(chart: Chart<'scatter'>, palette: Palette): Pen {
  const { ctx, chartArea: area, scales } = chart;
  return {
    ctx,
    area,
    palette,
    x: (ordinal) => scales['x']!.getPixelForValue(ordinal),
    y: (height) => scales['y']!.getPixelForValue(height),
  };
}

function stroke(
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

function write(
  { ctx }: Pen,
  text: string,
  at: readonly [number, number],
  how: { colour: string; font: string; align?: CanvasTextAlign; baseline?: CanvasTextBaseline },
): void {
  ctx.save();
  ctx.fillStyle = how.colour;
  ctx.font = `${how.font} ${figure}`;
  ctx.textAlign = how.align ?? 'left';
  ctx.textBaseline = how.baseline ?? 'middle';
  ctx.fillText(text, at[0], at[1]);
  ctx.restore();
}

/** The ground between the limits, or on the inner side of the only one. */
function drawZone(pen: Pen, { lower, upper }: RunChartData): void {
  if (lower === null && upper === null) return;
  const { ctx, area, palette } = pen;
  const top = upper === null ? area.top : Math.max(area.top, pen.y(upper.height));
  const bottom = lower === null ? area.bottom : Math.min(area.bottom, pen.y(lower.height));
  ctx.save();
  ctx.globalAlpha = 0.5;
  ctx.fillStyle = palette.band;
  ctx.fillRect(area.left, top, area.right - area.left, bottom - top);
  ctx.restore();
}

function drawDriftBand(pen: Pen, { line }: RunChartData): void {
  if (line === null) return;
  const { ctx, area, palette } = pen;
  const top = line.map(({ ordinal, high }) => [pen.x(ordinal), pen.y(high)] as const);
  const bottom = line.map(({ ordinal, low }) => [pen.x(ordinal), pen.y(low)] as const);
  ctx.save();
  ctx.beginPath();
  ctx.rect(area.left, area.top, area.right - area.left, area.bottom - area.top);
  ctx.clip();
  ctx.save();
  ctx.beginPath();
  [...top, ...bottom.toReversed()].forEach(([px, py], i) =>
    i === 0 ? ctx.moveTo(px, py) : ctx.lineTo(px, py),
  );
  ctx.clip();
  const height = area.bottom - area.top;
  for (let at = area.left - height; at < area.right; at += 8) {
    stroke(pen, palette.hatch, 1, [
      [at, area.top],
      [at + height, area.bottom],
    ]);
  }
  ctx.restore();
  stroke(pen, palette.rule, 1, top);
  stroke(pen, palette.rule, 1, bottom);
  ctx.restore();
}

function drawLimits(pen: Pen, { lower, upper }: RunChartData): void {
  const { area, palette } = pen;
  const named = [
    [upper, 'Upper'],
    [lower, 'Lower'],
  ] as const;
  for (const [limit, name] of named) {
    if (limit === null) continue;
    const py = pen.y(limit.height);
    stroke(pen, palette.ink, 2.5, [
      [area.left, py],
      [area.right, py],
    ]);
    const at = area.right + 8;
    write(pen, name, [at, py - 6], { colour: palette.ink, font: '14px' });
    write(pen, limit.label, [at, py + 11], { colour: palette.ink, font: '700 14px' });
  }
}

function drawBars(pen: Pen, { points }: RunChartData): void {
  for (const { ordinal, height, doubt, last } of points) {
    stroke(pen, last ? pen.palette.blue : pen.palette.ink, 1.5, [
      [pen.x(ordinal), pen.y(height - doubt)],
      [pen.x(ordinal), pen.y(height + doubt)],
    ]);
  }
}

function drawAxes(pen: Pen, { points, batchEnd, lastMade }: RunChartData): void {
  const { area, palette } = pen;
  const { left, right, top, bottom } = area;
  stroke(pen, palette.ink, 1.5, [
    [left, top],
    [left, bottom],
    [right, bottom],
  ]);
  const perStep = Math.abs(pen.y(1) - pen.y(0));
  const minor = tickStep(8 / perStep, 1);
  const major = tickStep(44 / perStep, minor);
  const from = (bottom - pen.y(0)) / -perStep;
  const to = (pen.y(0) - top) / perStep;
  for (let n = Math.ceil(from / minor); n * minor <= to; n += 1) {
    const height = n * minor;
    const isMajor = Math.abs(height / major - Math.round(height / major)) < 1e-9;
    const length = isMajor ? 10 : 5;
    stroke(pen, palette.ink, isMajor ? 1.5 : 1, [
      [left - length, pen.y(height)],
      [left, pen.y(height)],
    ]);
    if (!isMajor) continue;
    const sign = height > 0 ? '+' : height < 0 ? '\u2212' : '';
    const text = `${sign}${Math.abs(height)}`;
    write(pen, text, [left - 14, pen.y(height)], {
      colour: palette.ink,
      font: '14px',
      align: 'right',
    });
  }
  const end = Math.max(batchEnd, lastMade);
  const every = tickStep(34 / Math.abs(pen.x(1) - pen.x(0)), 1);
  const firstMark = points[0]?.mark ?? '';
  for (let ordinal = 1; ordinal <= end; ordinal += 1) {
    const isLast = ordinal === end;
    const clear = pen.x(end) - pen.x(ordinal) > 64 || end <= 20;
    const named = ordinal === 1 || isLast || (ordinal % every === 0 && clear);
    if (!named && every > 10) continue;
    stroke(pen, palette.ink, isLast ? 2.5 : 1, [
      [pen.x(ordinal), bottom],
      [pen.x(ordinal), bottom + (isLast ? 10 : 5)],
    ]);
    if (!named) continue;
    const prefix = firstMark.replace(/\d+$/, '');
    const text = ordinal === 1 ? `${prefix}1` : isLast ? `${ordinal}, last` : String(ordinal);
    write(pen, text, [pen.x(ordinal), bottom + 19], {
      colour: palette.ink,
      font: '14px',
      align: 'center',
    });
  }
}

/** The lane under the axis: a dotted upright, a foot, and the words; the moment to act the same in warm. */
function drawEvents(pen: Pen, { events, actAfter }: RunChartData): void {
  const { area, palette } = pen;
  const foot = area.bottom + 34;
  let free = -Infinity;
  const flag = (ordinal: number, title: string, note: string, colour: string, top: number) => {
    const px = pen.x(ordinal);
    const isWarm = colour === palette.warm;
    stroke(
      pen,
      isWarm ? colour : palette.rule,
      isWarm ? 2 : 1.25,
      [
        [px, top],
        [px, foot - 14],
      ],
      isWarm ? [] : [2, 4],
    );
    stroke(pen, colour, 1.5, [
      [px - 7, foot],
      [px + 7, foot],
    ]);
    stroke(pen, colour, 1.5, [
      [px, foot - 6],
      [px, foot],
    ]);
    pen.ctx.font = `700 13px ${figure}`;
    const half = Math.max(pen.ctx.measureText(title).width, pen.ctx.measureText(note).width) / 2;
    if (px - half < free + 6) return;
    free = px + half;
    write(pen, title, [px, foot + 12], { colour, font: '700 13px', align: 'center' });
    write(pen, note, [px, foot + 27], { colour, font: '12px', align: 'center' });
  };
  for (const event of events) {
    flag(event.ordinal, event.title, event.note, palette.ink, area.top);
  }
  if (actAfter !== null) {
    flag(actAfter + 0.5, 'Act here', 'offset or new corner', palette.warm, pen.y(0) + 14);
  }
}

function drawCrossing(pen: Pen, { crossing }: RunChartData): void {
  if (crossing === null) return;
  const { ctx, area, palette } = pen;
  const py = pen.y(crossing.height);
  const clamp = (px: number) => Math.min(px, area.right);
  const [first, best, last] = [crossing.first, crossing.best, crossing.last].map((ordinal) =>
    clamp(pen.x(ordinal)),
  ) as [number, number, number];
  stroke(pen, palette.warm, 5, [
    [first, py],
    [last, py],
  ]);
  for (const end of pen.x(crossing.last) > area.right ? [first] : [first, last]) {
    stroke(pen, palette.warm, 3, [
      [end, py - 9],
      [end, py + 9],
    ]);
  }
  if (pen.x(crossing.best) <= area.right) {
    ctx.save();
    ctx.fillStyle = palette.sheet;
    ctx.strokeStyle = palette.warm;
    ctx.lineWidth = 2.5;
    ctx.fillRect(best - 5, py - 10, 10, 20);
    ctx.strokeRect(best - 5, py - 10, 10, 20);
    ctx.restore();
  }
  ctx.font = `700 16px ${figure}`;
  const width = ctx.measureText(crossing.words).width;
  if (width > first - 20 - area.left) {
    // No room beside it: the words stand in the corner the line does not cross, without a leader.
    const corner = py < (area.top + area.bottom) / 2 ? area.bottom - 16 : area.top + 16;
    write(pen, crossing.words, [area.right - 6, corner], {
      colour: palette.warm,
      font: '700 14px',
      align: 'right',
    });
    return;
  }
  const right = Math.max(area.left + width, Math.min(first - 16, area.right));
  const upward = py - area.top > (area.bottom - area.top) / 2 ? 1 : -1;
  const wordsY = upward < 0 && py - area.top > 70 ? py - 60 : py + 60;
  write(pen, crossing.words, [right, wordsY], {
    colour: palette.warm,
    font: '700 16px',
    align: 'right',
  });
  stroke(pen, palette.warm, 1.5, [
    [right - 20, wordsY + (wordsY < py ? 12 : -12)],
    [first + 6, py + (wordsY < py ? -10 : 10)],
  ]);
}

function drawLastLabel(pen: Pen, { points }: RunChartData): void {
  const last = points.find((point) => point.last);
  if (last === undefined) return;
  const at = [pen.x(last.ordinal) + 12, pen.y(last.height) + 16] as const;
  pen.ctx.font = `700 16px ${figure}`;
  const overflow = at[0] + pen.ctx.measureText(last.label).width > pen.area.right;
  write(pen, last.label, overflow ? [at[0] - 24, at[1]] : at, {
    colour: pen.palette.blue,
    font: '700 16px',
    align: overflow ? 'right' : 'left',
  });
}
