import { offStripWords } from '@/lib/text/strip-labels';
import { formatLength } from '@/lib/units/format-length';
import type { Drawing, Shapes } from './large-drawing';
import { about, tooClose, without, type Stretch } from './stretch';
import type { StripData } from './strip-data';
import { notch, offPlate, tickLengths, touchPx } from './strip-metrics';
import type { StripRole } from './strip-role';
import type { StripScale } from './strip-scale';
import { textWidth } from './text-width';

/** No ticks on the far side of a break: from there on the baseline is not to scale. */
export function tickShapes({ scale, scaled, baseline }: Drawing): Shapes {
  const { minorPm, mediumPm, majorPm } = scale.ladder;
  const shapes: Shapes = [];
  for (let pm = scale.span.fromPm; pm <= scale.span.toPm; pm += minorPm) {
    const x = scale.xOf(pm);
    if (x < scaled.from || x > scaled.to) continue;
    const [role, length]: [StripRole, number] =
      pm % majorPm === 0
        ? ['tickMajor', tickLengths.major]
        : mediumPm !== null && pm % mediumPm === 0
          ? ['tickMedium', tickLengths.medium]
          : ['tickMinor', tickLengths.minor];
    shapes.push({ kind: 'line', role, x1: x, y1: baseline, x2: x, y2: baseline + length });
  }
  return shapes;
}

/** The baseline, open under the notch and broken before what is off the strip. */
export function baselineShapes({ data, scale, off, widthPx, baseline }: Drawing): Shapes {
  const breaks = [
    ...(off.left === null ? [] : [offPlate.breakAt]),
    ...(off.right === null ? [] : [widthPx - offPlate.breakAt]),
  ];
  const gaps: Stretch[] = breaks.map((x) => about(x, offPlate.breakWidth));
  const aimPm = data.aimPm ?? null;
  if (aimPm !== null && scale.holds(aimPm)) gaps.push(about(scale.xOf(aimPm), notch.width));
  const h = offPlate.breakHeight / 2;
  return [
    ...without({ from: 0, to: widthPx }, gaps).map(({ from, to }) => ({
      kind: 'line' as const,
      role: 'baseline' as const,
      x1: from,
      y1: baseline,
      x2: to,
      y2: baseline,
    })),
    ...breaks.map((x) => {
      const { from, to } = about(x, offPlate.breakWidth);
      const quarter = (to - from) / 4;
      const d = `M${from} ${baseline}L${from + quarter} ${baseline - h}L${to - quarter} ${baseline + h}L${to} ${baseline}`;
      return { kind: 'path' as const, role: 'break' as const, d };
    }),
  ];
}

/** A plate at each end beyond which something lies, pointing to it. */
export function plateShapes({ off, widthPx, bandMiddle }: Drawing): Shapes {
  const h = offPlate.height / 2;
  const plate = (end: number, inward: 1 | -1) => {
    const flat = end + inward * offPlate.width;
    const shoulder = end + inward * offPlate.point;
    return `M${flat} ${bandMiddle - h}H${shoulder}L${end} ${bandMiddle}L${shoulder} ${bandMiddle + h}H${flat}Z`;
  };
  const shapes: Shapes = [];
  if (off.left !== null) {
    shapes.push({ kind: 'path', role: off.left.stock ? 'plateLive' : 'plate', d: plate(0, 1) });
  }
  if (off.right !== null) {
    shapes.push({
      kind: 'path',
      role: off.right.stock ? 'plateLive' : 'plate',
      d: plate(widthPx, -1),
    });
  }
  return shapes;
}

/** Numerals, the unit at the right end, and the distance in words where something is off the strip. */
export function numeralShapes({
  data,
  scale,
  scaled,
  off,
  metrics,
  widthPx,
  numeralBaseline,
}: Drawing): Shapes {
  const widthOf = (text: string) => textWidth({ text, sizePx: metrics.numeralPx });
  const y = numeralBaseline;
  const shapes: Shapes = [];
  const taken: Stretch[] = [];
  if (off.left !== null) {
    const text = offStripWords(off.left, data, false);
    const role = off.left.stock ? 'plateWordsLive' : 'plateWords';
    shapes.push({ kind: 'text', role, x: 0, y, anchor: 'start', text });
    taken.push({ from: 0, to: Math.max(widthOf(text), scaled.from) });
  }
  if (off.right !== null) {
    const text = offStripWords(off.right, data, true);
    const role = off.right.stock ? 'plateWordsLive' : 'plateWords';
    shapes.push({ kind: 'text', role, x: widthPx, y, anchor: 'end', text });
    const from = Math.min(widthPx - widthOf(text), scaled.to);
    taken.push({ from, to: widthPx });
  } else {
    shapes.push({ kind: 'text', role: 'unit', x: widthPx, y, anchor: 'end', text: data.unit });
    taken.push({ from: widthPx - widthOf(data.unit), to: widthPx });
  }

  for (const { text, from, to } of numerals(data, scale, widthOf)) {
    if (taken.some((other) => tooClose({ from, to }, other, touchPx))) continue;
    taken.push({ from, to });
    shapes.push({ kind: 'text', role: 'numeral', x: (from + to) / 2, y, anchor: 'middle', text });
  }
  return shapes;
}

/** The numerals of a scale, from left to right; one that would stick out at the left end moves in, and gives way. */
function numerals(
  data: StripData,
  scale: StripScale,
  widthOf: (text: string) => number,
): (Stretch & { text: string })[] {
  const { majorPm, decimals } = scale.ladder;
  const all: (Stretch & { text: string })[] = [];
  const firstPm = Math.ceil(scale.span.fromPm / majorPm) * majorPm;
  for (let pm = firstPm; pm <= scale.span.toPm; pm += majorPm) {
    const text = formatLength(pm, { unit: data.unit, decimals, decimal: data.decimal });
    all.push({ text, ...about(scale.xOf(pm), widthOf(text)) });
  }
  const [first, ...rest] = all;
  if (first === undefined || first.from >= 0) return all;
  return [...rest, { text: first.text, from: 0, to: first.to - first.from }];
}
