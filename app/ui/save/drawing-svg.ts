import { axisTextPx, axisTicks } from '../charts/axis-turns';
import { tickStep } from '../charts/tick-step';
import { textWidth } from '../strip/text-width';
import type { Drawing, DrawnAt } from './drawing';

const plot = { left: 70, top: 28, width: 1000, height: 448 };
const whole = { width: 1180, height: 540 };

/** Drawings one under the other as one of their own (SVG 1.1), black on white, for paper and other programs. */
export function drawingSvg(drawings: readonly Drawing[], title: string): string {
  const height = whole.height * drawings.length;
  const plots = drawings.map((drawing, i) =>
    i === 0
      ? plotSvg(drawing, i)
      : `<g transform="translate(0 ${i * whole.height})">\n${plotSvg(drawing, i)}\n</g>`,
  );
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${whole.width} ${height}" width="${whole.width}" height="${height}" font-family="sans-serif" font-size="14">`,
    `<title>${escaped(title)}</title>`,
    `<rect width="100%" height="100%" fill="#fff"/>`,
    ...plots,
    '</svg>',
  ].join('\n');
}

function plotSvg(drawing: Drawing, index: number): string {
  const { along, up } = drawing;
  const x = (ordinal: number) =>
    round(plot.left + ((ordinal - along.min) / (along.max - along.min)) * plot.width);
  const y = (height: number) =>
    round(plot.top + ((up.max - height) / (up.max - up.min)) * plot.height);
  const pathOf = (at: readonly DrawnAt[]) =>
    at.map(({ ordinal, height }, i) => `${i === 0 ? 'M' : 'L'}${x(ordinal)} ${y(height)}`).join('');
  const bottom = plot.top + plot.height;
  const right = plot.left + plot.width;
  const clip = `plot${index}`;
  const parts = [
    `<clipPath id="${clip}"><rect x="${plot.left}" y="${plot.top}" width="${plot.width}" height="${plot.height}"/></clipPath>`,
  ];
  if (drawing.hatched !== null) {
    parts.push(
      `<pattern id="hatch${index}" width="8" height="8" patternUnits="userSpaceOnUse"><path d="M-1 -1L9 9M-1 7L1 9M7 -1L9 1" stroke="#000" stroke-width="0.5"/></pattern>`,
      `<path d="${pathOf(drawing.hatched)}Z" fill="url(#hatch${index})" clip-path="url(#${clip})"/>`,
    );
  }
  for (const { height, width, dash, name } of drawing.across) {
    parts.push(line(plot.left, y(height), right, y(height), width, dash));
    if (name !== '') parts.push(text(right + 8, y(height), 'start', name));
  }
  for (const { height, name } of drawing.ends) {
    parts.push(text(right + 8, y(height), 'start', name));
  }
  for (const { ordinal, title } of drawing.events) {
    parts.push(line(x(ordinal), plot.top, x(ordinal), bottom, 1, '2 4'));
    parts.push(text(x(ordinal), bottom + 42, 'middle', title));
  }
  for (const { at, width, dash } of drawing.lines) {
    parts.push(
      `<path d="${pathOf(at)}" fill="none" stroke="#000" stroke-width="${width}" clip-path="url(#${clip})"${dashes(dash)}/>`,
    );
  }
  for (const { ordinal, low, high } of drawing.bars) {
    parts.push(line(x(ordinal), y(low), x(ordinal), y(high), 1));
  }
  for (const { ordinal, height, shape } of drawing.points) {
    // What lies beyond the scale stands at its edge.
    const py = Math.min(bottom - 8, Math.max(plot.top + 8, y(height)));
    parts.push(...pointSvg(x(ordinal), shape === 'struck' ? py : y(height), shape));
  }
  parts.push(line(plot.left, plot.top, plot.left, bottom, 1.5));
  parts.push(line(plot.left, bottom, right, bottom, 1.5));
  const upright = tickStep(44 / (plot.height / (up.max - up.min)), drawing.finest);
  for (let n = Math.ceil(up.min / upright); n * upright <= up.max; n += 1) {
    const height = Number((n * upright).toFixed(6));
    parts.push(line(plot.left - 8, y(height), plot.left, y(height), 1.5));
    const sign = height > 0 ? '+' : height < 0 ? '\u2212' : '';
    const figure = String(Math.abs(height)).replace('.', drawing.decimal);
    parts.push(text(plot.left - 12, y(height), 'end', `${sign}${figure}`));
  }
  const pitchPx = plot.width / (along.max - along.min);
  for (const { ordinal, text: says } of drawing.turns === null
    ? numbered(along, pitchPx)
    : axisTicks(drawing.turns, pitchPx)) {
    parts.push(line(x(ordinal), bottom, x(ordinal), bottom + (says === null ? 4 : 8), 1.5));
    if (says !== null) parts.push(text(x(ordinal), bottom + 22, 'middle', says));
  }
  for (const { ordinal, height, text: says, free } of drawing.words) {
    // Left of its place where there is room, else where the plot begins.
    const py = y(height) + (free === 'over' ? -16 : 20);
    // What lies beyond the plot is said at its edge.
    const px = Math.min(x(ordinal), right);
    const isBeside = px - plot.left > 10 + textWidth({ text: says, sizePx: axisTextPx });
    parts.push(isBeside ? text(px - 10, py, 'end', says) : text(plot.left + 10, py, 'start', says));
  }
  parts.push(text(4, 12, 'start', drawing.heightTitle));
  return parts.join('\n');
}

function numbered({ min, max }: Drawing['along'], pitchPx: number) {
  const step = tickStep(70 / pitchPx, 1);
  const first = Math.max(1, Math.ceil(min / step));
  const count = Math.max(0, Math.floor(max / step) - first + 1);
  return Array.from({ length: count }, (_, i) => (first + i) * step).map((ordinal) => ({
    ordinal,
    text: String(ordinal),
  }));
}

function pointSvg(x: number, y: number, shape: Drawing['points'][number]['shape']): string[] {
  const dot = `<circle cx="${x}" cy="${y}" r="3"/>`;
  const ring = (r: number) =>
    `<circle cx="${x}" cy="${y}" r="${r}" fill="none" stroke="#000" stroke-width="1.5"/>`;
  switch (shape) {
    case 'dot':
      return [dot];
    case 'hollow':
      return [`<circle cx="${x}" cy="${y}" r="3" fill="#fff" stroke="#000" stroke-width="1.5"/>`];
    case 'ringed':
      return [dot, ring(8)];
    case 'struck':
      return [ring(4), line(round(x - 8), round(y + 5), round(x + 8), round(y - 5), 1.2)];
    case 'diamond':
      return [
        `<path d="M${x} ${round(y - 6)}L${round(x + 6)} ${y}L${x} ${round(y + 6)}L${round(x - 6)} ${y}Z" fill="#fff" stroke="#000" stroke-width="1.5"/>`,
      ];
  }
}

function line(x1: number, y1: number, x2: number, y2: number, width: number, dash = ''): string {
  return `<path d="M${x1} ${y1}L${x2} ${y2}" stroke="#000" stroke-width="${width}"${dashes(dash)}/>`;
}

function dashes(dash = ''): string {
  return dash === '' ? '' : ` stroke-dasharray="${dash}"`;
}

function text(x: number, y: number, anchor: string, words: string): string {
  return `<text x="${x}" y="${round(y + 5)}" text-anchor="${anchor}">${escaped(words)}</text>`;
}

function escaped(words: string): string {
  return words.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}

function round(value: number): number {
  return Math.round(value * 100) / 100;
}
