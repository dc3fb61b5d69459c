import { fitRulesTitles } from '@/lib/text/fit-rules-words';
import { formatLength } from '@/lib/units/format-length';
import type { Shape } from '../strip/shape';
import { shortened } from '../strip/shortened';
import { textWidth } from '../strip/text-width';
import {
  bandPx,
  centreEm,
  overhangPx,
  numeralLanePx,
  numeralPx,
  titlePx,
  type Axis,
  type Rule,
  type Shapes,
} from './fit-metrics';
import type { FitRole } from './fit-role';
import type { FitRulesData, FitRulesSide } from './fit-rules-data';
import type { FitRulesScale } from './fit-rules-scale';

type Place = { data: FitRulesData; scale: FitRulesScale; axis: Axis };

/** The zone between the limits of one side, its baseline and its posts. */
export function zoneShapes(
  { axis }: Place,
  { y, up, xOf }: Rule,
  side: FitRulesSide,
  role: FitRole,
): Shapes {
  const { lowerPm, upperPm } = side;
  const from = lowerPm === null ? axis.fromPx : xOf(lowerPm);
  const to = upperPm === null ? axis.toPx : xOf(upperPm);
  const shapes: Shapes = [];
  if ((lowerPm ?? upperPm) !== null && to > from) {
    shapes.push({
      kind: 'rect',
      role,
      x: from,
      y: up === -1 ? y - bandPx : y,
      width: to - from,
      height: bandPx,
    });
  }
  shapes.push({ kind: 'line', role: 'baseline', x1: axis.fromPx, y1: y, x2: axis.toPx, y2: y });
  for (const pm of [lowerPm, upperPm]) {
    if (pm === null) continue;
    const x = xOf(pm);
    shapes.push({
      kind: 'line',
      role: 'post',
      x1: x,
      y1: y - up * 5,
      x2: x,
      y2: y + up * (bandPx + 2),
    });
  }
  return shapes;
}

export function tickShapes({ data, scale, axis }: Place, { y, up, xOf, slidPm }: Rule): Shapes {
  const { minorPm, majorPm, decimals } = scale.ladder;
  const fromPm = scale.fromPm - slidPm;
  const toPm = scale.toPm - slidPm;
  const shapes: Shapes = [];
  for (let pm = Math.ceil(fromPm / minorPm) * minorPm; pm <= toPm; pm += minorPm) {
    const isMajor = pm % majorPm === 0;
    const x = xOf(pm);
    const role = isMajor ? 'tickMajor' : 'tick';
    shapes.push({ kind: 'line', role, x1: x, y1: y, x2: x, y2: y + up * (isMajor ? 16 : 8) });
    if (!isMajor) continue;
    const text = formatLength(pm, { unit: data.unit, decimals, decimal: data.decimal });
    const half = textWidth({ text, sizePx: numeralPx }) / 2;
    if (x - half < axis.fromPx - overhangPx || x + half > axis.toPx + overhangPx) continue;
    const textY = y + up * (bandPx + numeralLanePx / 2) + numeralPx * centreEm;
    shapes.push({ kind: 'text', role: 'numeral', x, y: textY, anchor: 'middle', text });
  }
  return shapes;
}

export type Titles = ReturnType<typeof fitRulesTitles>;

/** Names wider than this are shortened; the picture's own text and the table say them whole. */
const widestPx = 200;
const gapPx = 12;

/** Room for the titles at the left of both rules. */
export function gutterOf({ internal, external }: Titles): number {
  const widths = [
    ...[internal.title, external.title].map((text) => textWidth({ text, sizePx: titlePx })),
    ...[internal.subtitle, external.subtitle].map((text) => textWidth({ text, sizePx: numeralPx })),
  ];
  return Math.min(widestPx, Math.max(72, ...widths)) + gapPx;
}

export function titleShapes(
  { internal, external, between }: Titles,
  at: { isNarrow: boolean; upperY: number; lowerY: number; heightPx: number; widthPx: number },
): Shapes {
  if (at.isNarrow) {
    const both = (x: number, y: number, side: Titles['internal']) => {
      const roomPx = at.widthPx - 2 * x - 10;
      const subtitle = shortened(side.subtitle, numeralPx, roomPx / 2);
      const leftPx = roomPx - textWidth({ text: subtitle, sizePx: numeralPx });
      const title = shortened(side.title, titlePx, leftPx);
      return [
        line('title', x, y, title),
        line('subtitle', x + textWidth({ text: title, sizePx: titlePx }) + 10, y, subtitle),
      ];
    };
    return [...both(8, 16, internal), ...both(8, at.heightPx - 4, external)];
  }
  const title = (text: string) => shortened(text, titlePx, widestPx);
  const subtitle = (text: string) => shortened(text, numeralPx, widestPx);
  return [
    line('title', 0, at.upperY - 16, title(internal.title)),
    line('subtitle', 0, at.upperY + 2, subtitle(internal.subtitle)),
    line('subtitle', 0, (at.upperY + at.lowerY) / 2 + 8, between),
    line('title', 0, at.lowerY + 10, title(external.title)),
    line('subtitle', 0, at.lowerY + 28, subtitle(external.subtitle)),
  ];
}

function line(role: FitRole, x: number, y: number, text: string): Shape<FitRole> {
  return { kind: 'text', role, x, y, anchor: 'start', text };
}
