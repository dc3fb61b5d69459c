import type { Plugin } from 'chart.js';
import { figure, penOf, stroke, write, type Pen } from './chart-pen';
import { drawAxes } from './draw-axes';
import { drawCrossing } from './draw-crossing';
import { drawMeets } from './draw-meets';
import { labelPlace } from './label-place';
import type { Palette } from './palette';
import type { RunChartData } from './run-chart-data';

/** Draws what chart.js has no word for: limits, ticks, bars, the hatched band, events, the crossing. */
export function runMarksPlugin(data: RunChartData, palette: Palette): Plugin<'scatter'> {
  return {
    id: 'run-marks',
    beforeDatasetsDraw(chart) {
      const pen = penOf(chart, palette);
      drawZone(pen, data);
      drawDriftBand(pen, data);
      drawEvents(pen, data);
      drawAim(pen, data);
      drawLimits(pen, data);
      // Words before what is measured, so that they hide none of it.
      drawMeets(pen, data);
      drawLastLabel(pen, data);
      drawBars(pen, data);
      drawAside(pen, data);
    },
    afterDatasetsDraw(chart) {
      const pen = penOf(chart, palette);
      drawAxes(pen, { turns: data.turns, finest: 1, decimal: data.decimal });
      drawOdd(pen, data);
      drawCrossing(pen, data);
    },
  };
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
  const gap =
    lower === null || upper === null ? Infinity : pen.y(lower.height) - pen.y(upper.height);
  const aside = Math.max(0, (namePx - gap) / 2);
  const named = [
    [upper, 'Upper', -aside],
    [lower, 'Lower', aside],
  ] as const;
  for (const [limit, name, off] of named) {
    if (limit === null) continue;
    const py = pen.y(limit.height);
    stroke(pen, palette.ink, 2.5, [
      [area.left, py],
      [area.right, py],
    ]);
    const at = area.right + 8;
    write(pen, name, [at, py + off - 6], { colour: palette.ink, font: '14px' });
    write(pen, limit.label, [at, py + off + 11], { colour: palette.ink, font: '700 14px' });
  }
}

/** A limit's name and figure take so much height at the right end. */
const namePx = 36;

/** The middle of the limits as a fine line, by zones with the quarter points; named where there is room. */
function drawAim(pen: Pen, { aim, quarters, upper, lower }: RunChartData): void {
  if (aim === null) return;
  const { area, palette } = pen;
  const across = (py: number, dash: number[]) =>
    stroke(
      pen,
      palette.rule,
      1,
      [
        [area.left, py],
        [area.right, py],
      ],
      dash,
    );
  const py = pen.y(aim.height);
  across(py, [10, 4, 2, 4]);
  for (const height of quarters === null ? [] : [quarters.low, quarters.high]) {
    across(pen.y(height), [2, 4]);
  }
  if (pen.y(lower!.height) - pen.y(upper!.height) < 120) return;
  const at = area.right + 8;
  write(pen, 'Aim', [at, py - 6], { colour: palette.ink2, font: '14px' });
  write(pen, aim.label, [at, py + 11], { colour: palette.ink2, font: '14px' });
}

function drawBars(pen: Pen, { points }: RunChartData): void {
  for (const { ordinal, height, doubt, last } of points) {
    stroke(pen, last ? pen.palette.blue : pen.palette.ink, 1.5, [
      [pen.x(ordinal), pen.y(height - doubt)],
      [pen.x(ordinal), pen.y(height + doubt)],
    ]);
  }
}

/** Set aside: a ring with a line through, at the edge of the plot where it lies beyond it. */
function drawAside(pen: Pen, { aside }: RunChartData): void {
  const { ctx, area, palette } = pen;
  for (const { ordinal, height } of aside) {
    const px = pen.x(ordinal);
    const py = Math.min(area.bottom - 8, Math.max(area.top + 8, pen.y(height)));
    ctx.save();
    ctx.strokeStyle = palette.ink;
    ctx.lineWidth = 1.2;
    ctx.beginPath();
    ctx.arc(px, py, 5.5, 0, 2 * Math.PI);
    ctx.stroke();
    ctx.restore();
    stroke(pen, palette.ink, 1.2, [
      [px - 9, py + 5],
      [px + 9, py - 5],
    ]);
  }
}

/** Off the line: a warm ring round the point. */
function drawOdd(pen: Pen, { points }: RunChartData): void {
  const { ctx, palette } = pen;
  for (const { ordinal, height, odd } of points) {
    if (!odd) continue;
    ctx.save();
    ctx.strokeStyle = palette.warm;
    ctx.lineWidth = 2;
    ctx.beginPath();
    ctx.arc(pen.x(ordinal), pen.y(height), 11, 0, 2 * Math.PI);
    ctx.stroke();
    ctx.restore();
  }
}

/** Words in the lane under the axis are no wider than this. */
const flagPx = 170;

/**
 * The lane under the axis: a dotted upright, a foot, and the words; the moment to act the same in warm. That
 * moment is named first; an event whose words find no room has its foot alone, and its row in the list.
 */
function drawEvents(pen: Pen, { events, actAfter, crossing }: RunChartData): void {
  const { area, palette } = pen;
  const foot = area.bottom + 34;
  const taken: { from: number; to: number }[] = [];
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
    const most = Math.min(flagPx, area.right - area.left);
    const head = shortened(pen, title, `700 13px ${figure}`, most);
    const below = shortened(pen, note, `12px ${figure}`, most);
    const half = Math.max(head.width, below.width) / 2;
    const middle = Math.min(area.right - half, Math.max(area.left + half, px));
    const [from, to] = [middle - half - 3, middle + half + 3];
    if (taken.some((other) => from < other.to && to > other.from)) return;
    taken.push({ from, to });
    write(pen, head.text, [middle, foot + 12], { colour, font: '700 13px', align: 'center' });
    write(pen, below.text, [middle, foot + 27], { colour, font: '12px', align: 'center' });
  };
  if (actAfter !== null) {
    // From the limit it is for down to its foot.
    const top = crossing === null ? area.top : pen.y(crossing.height) + 14;
    flag(actAfter + 0.5, 'Act here', 'offset or new insert', palette.warm, top);
  }
  for (const event of events) {
    flag(event.ordinal, event.title, event.note, palette.ink, area.top);
  }
}

/** A text as far as there is room for it, and how wide it then is. */
function shortened({ ctx }: Pen, text: string, font: string, most: number) {
  ctx.font = font;
  const widthOf = (some: string) => ctx.measureText(some).width;
  if (widthOf(text) <= most) return { text, width: widthOf(text) };
  let end = text.length - 1;
  while (end > 1 && widthOf(`${text.slice(0, end).trimEnd()}\u2026`) > most) end -= 1;
  const short = `${text.slice(0, end).trimEnd()}\u2026`;
  return { text: short, width: widthOf(short) };
}

function drawLastLabel(pen: Pen, { points, line }: RunChartData): void {
  const last = points.find((point) => point.last);
  if (last === undefined) return;
  pen.ctx.font = `700 16px ${figure}`;
  const widthOf = (text: string) => pen.ctx.measureText(text).width;
  const isWide = widthOf(last.label) > pen.area.right - pen.area.left;
  const label = isWide ? last.shortLabel : last.label;
  const placed = (of: { ordinal: number; height: number }) => ({
    x: pen.x(of.ordinal),
    y: pen.y(of.height),
  });
  const marks = [...points, ...(line ?? [])].map(placed);
  const at = labelPlace(placed(last), widthOf(label), pen.area, marks);
  write(pen, label, [at.x, at.y], {
    colour: pen.palette.blue,
    font: '700 16px',
    over: pen.palette.sheet,
  });
}
