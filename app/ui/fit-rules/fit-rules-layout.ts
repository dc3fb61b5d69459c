import { clearanceSteps } from '@/lib/text/fit-words';
import { fitRulesTitles } from '@/lib/text/fit-rules-words';
import { formatLength } from '@/lib/units/format-length';
import { pmPerMm } from '@/lib/units/picometres';
import type { Shape } from '../strip/shape';
import { textWidth } from '../strip/text-width';
import type { FitRole } from './fit-role';
import type { FitRulesData, FitRulesPiece, FitTie } from './fit-rules-data';
import { fitRulesScale, type FitRulesScale } from './fit-rules-scale';
import { markLanes } from './mark-lanes';
import { tieLabels, type Segment } from './tie-labels';

export type FitRulesLayout = {
  widthPx: number;
  heightPx: number;
  /** In the order they are drawn. */
  shapes: Shape<FitRole>[];
  /** How many times full size, where a px is 1/96 in as CSS has it. */
  timesFullSize: number;
  scale: Pick<FitRulesScale, 'fromPm' | 'toPm' | 'pxPerPm' | 'ladder'>;
};

export type FitRulesOptions = {
  /** Only this pair is drawn (ties first, then pieces to make), on the scale of all of them. */
  onlyPair?: number;
};

/** From the baseline of a rule to the far edge of its zone, px. */
const bandPx = 34;
const rulesApartPx = 70;
const uprightPx = 24;
const numeralLanePx = 20;
const leaderPx = 8;
const markLanePx = 22;
const markPx = 17;
const numeralPx = 13;
const titlePx = 16;
const clearancePx = 16;
const narrowFromPx = 600;
const edgePx = 16;

/** A CSS px is 1/96 in. */
const mmPerPx = 25.4 / 96;

/**
 * The two rules of a fit as geometry: internal above with its ticks up, external below with its ticks down
 * and slid over by the aim, so that a pair at its aim stands plumb and a lean is the error.
 *
 * The same data and width give the same picture. Under 600 px the titles stand above and below the rules.
 */
export function fitRulesLayout(
  data: FitRulesData,
  widthPx: number,
  options: FitRulesOptions = {},
): FitRulesLayout {
  const isNarrow = widthPx < narrowFromPx;
  const titles = fitRulesTitles(data);
  const gutterPx = isNarrow ? 0 : gutterOf(titles);
  const axis = { fromPx: isNarrow ? 8 : gutterPx, toPx: widthPx - (isNarrow ? 8 : edgePx) };
  const scale = fitRulesScale(data, axis, numeralPx);
  const shown = onlyPair(data, options.onlyPair);

  const upper = standing(shown.internal.pieces, scale.internalX);
  const lower = standing(
    [
      ...shown.external.pieces,
      ...shown.toMake.map(({ external, targetPm }) => ({
        mark: external,
        sizePm: targetPm,
        expandedPm: 0,
        isToMake: true,
      })),
    ],
    scale.externalX,
  );
  const lanesAbove = markLanes(upper, { ...axis, sizePx: markPx });
  const lanesBelow = markLanes(lower, { ...axis, sizePx: markPx });
  const titlePxHigh = isNarrow ? 24 : 0;
  const marksTop = titlePxHigh + lanesAbove.lanes * markLanePx;
  const upperY = marksTop + leaderPx + numeralLanePx + bandPx;
  const lowerY = upperY + rulesApartPx;
  const marksBottom = lowerY + bandPx + numeralLanePx + leaderPx;
  const heightPx = marksBottom + lanesBelow.lanes * markLanePx + titlePxHigh;

  const top: Rule = { y: upperY, up: -1, xOf: scale.internalX, slidPm: 0 };
  const bottom: Rule = { y: lowerY, up: 1, xOf: scale.externalX, slidPm: data.aimPm };
  const place = { data, scale, axis };
  return {
    widthPx,
    heightPx,
    timesFullSize: scale.pxPerPm * pmPerMm * mmPerPx,
    scale,
    shapes: [
      ...zoneShapes(place, top, data.internal, 'bandInternal'),
      ...zoneShapes(place, bottom, data.external, 'bandExternal'),
      ...tickShapes(place, top),
      ...tickShapes(place, bottom),
      ...pieceShapes(upper, top),
      ...tieShapes(shown, upper, lower, { upperY, lowerY, ...axis }),
      ...pieceShapes(lower, bottom),
      ...notchShapes(lower, bottom),
      ...markShapes(upper, lanesAbove.marks, { nearPx: marksTop, towards: -1 }),
      ...markShapes(lower, lanesBelow.marks, { nearPx: marksBottom, towards: 1 }),
      ...titleShapes(titles, { isNarrow, upperY, lowerY, heightPx }),
    ],
  };
}

type Shapes = Shape<FitRole>[];
type Standing = FitRulesPiece & { x: number; isToMake: boolean };
type Rule = { y: number; up: -1 | 1; xOf: (pm: number) => number; slidPm: number };
type Place = { data: FitRulesData; scale: FitRulesScale; axis: { fromPx: number; toPx: number } };

function standing(
  pieces: readonly (FitRulesPiece & { isToMake?: boolean })[],
  xOf: (pm: number) => number,
): Standing[] {
  return pieces
    .map((piece) => ({ ...piece, x: xOf(piece.sizePm), isToMake: piece.isToMake === true }))
    .sort((a, b) => a.x - b.x);
}

function onlyPair(data: FitRulesData, index: number | undefined): FitRulesData {
  if (index === undefined) return data;
  const ties = data.ties.slice(index, index + 1);
  const first = index - data.ties.length;
  const toMake = first < 0 ? [] : data.toMake.slice(first, first + 1);
  const marks = new Set([...ties, ...toMake].flatMap((tie) => [tie.internal, tie.external]));
  const only = (side: FitRulesData['internal']) => ({
    ...side,
    pieces: side.pieces.filter(({ mark }) => marks.has(mark)),
  });
  return { ...data, ties, toMake, internal: only(data.internal), external: only(data.external) };
}

function zoneShapes(
  { axis }: Place,
  { y, up, xOf }: Rule,
  side: FitRulesData['internal'],
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

function tickShapes({ data, scale, axis }: Place, { y, up, xOf, slidPm }: Rule): Shapes {
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
    if (x - half < axis.fromPx - edgePx || x + half > axis.toPx + edgePx) continue;
    const textY = y + up * (bandPx + numeralLanePx / 2) + numeralPx * 0.36;
    shapes.push({ kind: 'text', role: 'numeral', x, y: textY, anchor: 'middle', text });
  }
  return shapes;
}

/** Pieces stand on their rule; bars alternate between two heights so that neighbours do not merge. */
function pieceShapes(pieces: readonly Standing[], { y, up, xOf }: Rule): Shapes {
  const ends = [-Infinity, -Infinity];
  return pieces
    .filter(({ isToMake }) => !isToMake)
    .flatMap(({ sizePm, expandedPm, x }) => {
      const from = Math.min(xOf(sizePm - expandedPm), x - 3);
      const to = Math.max(xOf(sizePm + expandedPm), x + 3);
      const level = from > ends[0]! + 1 ? 0 : from > ends[1]! + 1 || ends[1]! < ends[0]! ? 1 : 0;
      ends[level] = to;
      const barY = y + up * (10 + 9.5 * level);
      return [
        { kind: 'rect', role: 'bar', x: from, y: barY - 1.5, width: to - from, height: 3 },
        { kind: 'line', role: 'upright', x1: x, y1: y, x2: x, y2: y + up * uprightPx },
      ] satisfies Shapes;
    });
}

function tieShapes(
  shown: FitRulesData,
  upper: readonly Standing[],
  lower: readonly Standing[],
  area: { upperY: number; lowerY: number; fromPx: number; toPx: number },
): Shapes {
  const lineOf = ({ internal, external }: { internal: string; external: string }) => {
    const from = upper.find(({ mark }) => mark === internal);
    const to = lower.find(({ mark }) => mark === external);
    if (from === undefined || to === undefined) return [];
    return [{ x1: from.x, y1: area.upperY, x2: to.x, y2: area.lowerY }];
  };
  const ties = shown.ties.flatMap((tie) => lineOf(tie).map((line) => ({ tie, line })));
  const toMake = shown.toMake.flatMap(lineOf);
  const words = [
    ...ties.map(({ tie, line }) => ({ text: clearanceSteps(tie.clearancePm, shown), line })),
    ...toMake.map((line) => ({ text: '', line })),
  ];
  const labels = tieLabels(words, { fromPx: area.fromPx, toPx: area.toPx, sizePx: clearancePx });
  return [
    ...toMake.map((line) => ({ kind: 'line' as const, role: 'toMakeLine' as const, ...line })),
    ...ties.flatMap(({ tie, line }, index) => tieShape(tie, line, labels[index]!)),
  ];
}

function tieShape(
  { state }: FitTie,
  line: Segment,
  label: ReturnType<typeof tieLabels>[number],
): Shapes {
  const isOut = state === 'out' || state === 'to cut';
  const isUnsure = state === 'unsure';
  const suffix = isOut ? 'Out' : isUnsure ? 'Unsure' : '';
  const shapes: Shapes = [{ kind: 'line', role: `tie${suffix}`, ...line }];
  if (label === null || label.text === '') return shapes;
  const { x, y, width, height } = label.box;
  if (isUnsure) {
    const box = { x: x - 4, y: y - 2, width: width + 8, height: height + 4 };
    shapes.push({ kind: 'rect', role: 'unsureBox', ...box });
  }
  const baseline = y + height / 2 + clearancePx * 0.36;
  shapes.push({
    kind: 'text',
    role: `clearance${suffix}`,
    x: x + width / 2,
    y: baseline,
    anchor: 'middle',
    text: label.text,
  });
  return shapes;
}

/** A piece to make is a notch in its rule. */
function notchShapes(pieces: readonly Standing[], { y }: Rule): Shapes {
  return pieces
    .filter(({ isToMake }) => isToMake)
    .map(({ x }) => ({
      kind: 'path',
      role: 'toMakeNotch',
      d: `M${x - 8} ${y}L${x} ${y + 13}L${x + 8} ${y}Z`,
    }));
}

function markShapes(
  pieces: readonly Standing[],
  marks: ReturnType<typeof markLanes>['marks'],
  { nearPx, towards }: { nearPx: number; towards: -1 | 1 },
): Shapes {
  const edgeOf = (lane: number | 'rule') =>
    lane === 'rule' ? nearPx - towards * leaderPx : nearPx + towards * lane * markLanePx;
  return marks.flatMap(({ index, lane, x, leader }) => {
    const { mark, isToMake } = pieces[index]!;
    const middle = nearPx + towards * (lane + 0.5) * markLanePx;
    const d = leader
      .map((point, i) => `${i === 0 ? 'M' : 'L'}${point.x} ${edgeOf(point.lane)}`)
      .join('');
    return [
      { kind: 'path', role: isToMake ? 'leaderLive' : 'leader', d },
      {
        kind: 'text',
        role: isToMake ? 'markLive' : 'mark',
        x,
        y: middle + markPx * 0.36,
        anchor: 'middle',
        text: mark,
      },
    ] satisfies Shapes;
  });
}

type Titles = ReturnType<typeof fitRulesTitles>;

function gutterOf({ internal, external }: Titles): number {
  const widths = [
    ...[internal.title, external.title].map((text) => textWidth({ text, sizePx: titlePx })),
    ...[internal.subtitle, external.subtitle].map((text) => textWidth({ text, sizePx: numeralPx })),
  ];
  return edgePx + Math.min(200, Math.max(72, ...widths)) + 12;
}

function titleShapes(
  { internal, external, between }: Titles,
  at: { isNarrow: boolean; upperY: number; lowerY: number; heightPx: number },
): Shapes {
  const line = (role: FitRole, x: number, y: number, text: string) =>
    ({ kind: 'text', role, x, y, anchor: 'start', text }) as const;
  if (at.isNarrow) {
    const both = (x: number, y: number, { title, subtitle }: Titles['internal']) => [
      line('title', x, y, title),
      line('subtitle', x + textWidth({ text: title, sizePx: titlePx }) + 10, y, subtitle),
    ];
    return [...both(8, 16, internal), ...both(8, at.heightPx - 4, external)];
  }
  return [
    line('title', edgePx, at.upperY - 16, internal.title),
    line('subtitle', edgePx, at.upperY + 2, internal.subtitle),
    line('subtitle', edgePx, (at.upperY + at.lowerY) / 2 + 8, between),
    line('title', edgePx, at.lowerY + 10, external.title),
    line('subtitle', edgePx, at.lowerY + 28, external.subtitle),
  ];
}
