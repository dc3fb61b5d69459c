import { axisTicks, type AxisTurns } from './axis-turns';
import { stroke, write, type Pen } from './chart-pen';
import { tickStep } from './tick-step';

export type Axes = {
  turns: AxisTurns;
  /** The finest step of the upright scale, in steps from the nominal. */
  finest: number;
  decimal: '.' | ',';
};

/** Both axes with ticks of 1, 2 and 5, inside the plot's own margins. */
export function drawAxes(pen: Pen, { turns, finest, decimal }: Axes): void {
  const { area, palette } = pen;
  const { left, right, top, bottom } = area;
  stroke(pen, palette.ink, 1.5, [
    [left, top],
    [left, bottom],
    [right, bottom],
  ]);
  const perStep = Math.abs(pen.y(1) - pen.y(0));
  const minor = tickStep(8 / perStep, finest);
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
    const text = `${sign}${String(Number(Math.abs(height).toFixed(6))).replace('.', decimal)}`;
    write(pen, text, [left - 14, pen.y(height)], {
      colour: palette.ink,
      font: '14px',
      align: 'right',
    });
  }
  for (const { ordinal, text } of axisTicks(turns, Math.abs(pen.x(1) - pen.x(0)))) {
    const isLast = ordinal === turns.end && text !== null;
    stroke(pen, palette.ink, isLast ? 2.5 : 1, [
      [pen.x(ordinal), bottom],
      [pen.x(ordinal), bottom + (isLast ? 10 : 5)],
    ]);
    if (text === null) continue;
    write(pen, text, [pen.x(ordinal), bottom + 19], {
      colour: palette.ink,
      font: '14px',
      align: 'center',
    });
  }
}
