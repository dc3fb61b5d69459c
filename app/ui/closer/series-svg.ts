import type { CloserChartData } from '../charts/closer-chart-data';
import { tickStep } from '../charts/tick-step';

const plot = { left: 70, top: 16, width: 1000, height: 460 };
const whole = { width: 1180, height: 540 };

/** The stretch as a drawing of its own (SVG 1.1), black on white, for paper and other programs. */
export function seriesSvg(data: CloserChartData, title: string): string {
  const { window: seen, range, points, dense, gap } = data;
  const x = (ordinal: number) =>
    round(plot.left + ((ordinal - seen.from) / (seen.to - seen.from)) * plot.width);
  const y = (height: number) =>
    round(plot.top + ((range.max - height) / (range.max - range.min)) * plot.height);
  const bottom = plot.top + plot.height;
  const right = plot.left + plot.width;
  const parts: string[] = [];
  for (const [limit, name] of [
    [data.upper, 'Upper'],
    [data.lower, 'Lower'],
  ] as const) {
    if (limit === null) continue;
    const py = y(limit.height);
    parts.push(line(plot.left, py, right, py, 2.5));
    parts.push(text(right + 8, py, 'start', `${name} ${limit.label}`));
  }
  for (const { ordinal, title: words } of data.events) {
    parts.push(line(x(ordinal), plot.top, x(ordinal), bottom, 1, '2 4'));
    parts.push(text(x(ordinal), bottom + 42, 'middle', words));
  }
  if (dense) {
    let d = '';
    points.forEach(({ ordinal, height }, i) => {
      const before = points[i - 1];
      const open = before === undefined || ordinal - before.ordinal > gap;
      d += `${open ? 'M' : 'L'}${x(ordinal)} ${y(height)}`;
    });
    parts.push(`<path d="${d}" fill="none" stroke="#000" stroke-width="1"/>`);
  }
  for (const { ordinal, height, outside } of points) {
    if (dense && !outside) continue;
    const [px, py] = [x(ordinal), y(height)];
    parts.push(
      outside
        ? `<path d="M${px} ${round(py - 6)}L${round(px + 6)} ${py}L${px} ${round(py + 6)}L${round(px - 6)} ${py}Z" fill="#fff" stroke="#000" stroke-width="1.5"/>`
        : `<circle cx="${px}" cy="${py}" r="3"/>`,
    );
  }
  parts.push(line(plot.left, plot.top, plot.left, bottom, 1.5));
  parts.push(line(plot.left, bottom, right, bottom, 1.5));
  const upright = tickStep(44 / (plot.height / (range.max - range.min)), 1);
  for (let n = Math.ceil(range.min / upright); n * upright <= range.max; n += 1) {
    const height = n * upright;
    parts.push(line(plot.left - 8, y(height), plot.left, y(height), 1.5));
    const sign = height > 0 ? '+' : height < 0 ? '\u2212' : '';
    parts.push(text(plot.left - 12, y(height), 'end', `${sign}${Math.abs(height)}`));
  }
  const along = tickStep(70 / (plot.width / (seen.to - seen.from)), 1);
  for (let n = Math.max(1, Math.ceil(seen.from / along)); n * along <= seen.to; n += 1) {
    parts.push(line(x(n * along), bottom, x(n * along), bottom + 8, 1.5));
    parts.push(text(x(n * along), bottom + 22, 'middle', String(n * along)));
  }
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${whole.width} ${whole.height}" width="${whole.width}" height="${whole.height}" font-family="sans-serif" font-size="14">`,
    `<title>${escaped(title)}</title>`,
    `<rect width="100%" height="100%" fill="#fff"/>`,
    ...parts,
    text(4, 12, 'start', data.heightTitle),
    '</svg>',
  ].join('\n');
}

function line(x1: number, y1: number, x2: number, y2: number, width: number, dash = ''): string {
  const dashes = dash === '' ? '' : ` stroke-dasharray="${dash}"`;
  return `<path d="M${x1} ${y1}L${x2} ${y2}" stroke="#000" stroke-width="${width}"${dashes}/>`;
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
