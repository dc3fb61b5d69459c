import { pmPerMm } from '@/lib/units/picometres';
import { fitRulesTitles } from '@/lib/text/fit-rules-words';
import type { Shape } from '../strip/shape';
import { gutterOf, tickShapes, titleShapes, zoneShapes } from './draw-fit-axis';
import { denseShapes, isDense, markedOf } from './dense';
import { markShapes, notchShapes, pieceShapes } from './draw-fit-pieces';
import { tieShapes } from './draw-ties';
import {
  bandPx,
  leaderLeastPx,
  leaderMostPx,
  markLanePx,
  markPx,
  numeralLanePx,
  numeralPx,
  rulesApartPx,
  type Rule,
  type Standing,
} from './fit-metrics';
import type { FitRole } from './fit-role';
import type { FitRulesData, FitRulesPiece, FitRulesSide } from './fit-rules-data';
import { fitRulesScale, type FitRulesScale } from './fit-rules-scale';
import { markLanes, type LaneMark } from './mark-lanes';

export type FitRulesLayout = {
  widthPx: number;
  heightPx: number;
  /** In the order they are drawn. */
  shapes: Shape<FitRole>[];
  /** How many times full size, where a px is 1/96 in as CSS has it. */
  timesFullSize: number;
  /** How many pieces carry their mark, where not all can. */
  marked: number | null;
  scale: Pick<FitRulesScale, 'fromPm' | 'toPm' | 'pxPerPm' | 'ladder'>;
};

export type FitRulesOptions = {
  /** Only this pair is drawn (ties first, then pieces to make), on the scale of all of them. */
  onlyPair?: number;
};

const narrowFromPx = 600;

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
  const axis = { fromPx: isNarrow ? 8 : gutterPx, toPx: widthPx - (isNarrow ? 8 : 2) };
  const scale = fitRulesScale(data, axis, numeralPx);
  const shown = onlyPair(data, options.onlyPair);

  const upper = standing(
    [...shown.internal.pieces, ...piecesToMake(shown, 'internal')],
    scale.internalX,
  );
  const lower = standing(
    [...shown.external.pieces, ...piecesToMake(shown, 'external')],
    scale.externalX,
  );
  const dense = isDense(shown);
  const roomPx = axis.toPx - axis.fromPx;
  const markedAbove = dense ? markedOf(upper, shown, roomPx) : upper;
  const markedBelow = dense ? markedOf(lower, shown, roomPx) : lower;
  const lanesAbove = markLanes(markedAbove, { ...axis, sizePx: markPx });
  const lanesBelow = markLanes(markedBelow, { ...axis, sizePx: markPx });
  const titlePxHigh = isNarrow ? 24 : 0;
  const marksTop = titlePxHigh + lanesAbove.lanes * markLanePx;
  const leaderAbovePx = leaderHeightPx(lanesAbove.marks);
  const leaderBelowPx = leaderHeightPx(lanesBelow.marks);
  const upperY = marksTop + leaderAbovePx + numeralLanePx + bandPx;
  const lowerY = upperY + rulesApartPx;
  const marksBottom = lowerY + bandPx + numeralLanePx + leaderBelowPx;
  const heightPx = marksBottom + lanesBelow.lanes * markLanePx + titlePxHigh;

  const top: Rule = { y: upperY, up: -1, xOf: scale.internalX, slidPm: 0 };
  const bottom: Rule = { y: lowerY, up: 1, xOf: scale.externalX, slidPm: data.aimPm };
  const place = { data, scale, axis };
  return {
    widthPx,
    heightPx,
    timesFullSize: scale.pxPerPm * pmPerMm * mmPerPx,
    marked: dense ? markedAbove.length + markedBelow.length : null,
    scale,
    shapes: [
      ...zoneShapes(place, top, data.internal, 'bandInternal'),
      ...zoneShapes(place, bottom, data.external, 'bandExternal'),
      ...tickShapes(place, top),
      ...tickShapes(place, bottom),
      ...(dense ? denseShapes(upper, top) : pieceShapes(upper, top)),
      ...tieShapes(shown, upper, lower, { upperY, lowerY, ...axis }, dense),
      ...(dense ? denseShapes(lower, bottom) : pieceShapes(lower, bottom)),
      ...(dense ? [] : notchShapes(upper, top)),
      ...(dense ? [] : notchShapes(lower, bottom)),
      ...markShapes(markedAbove, lanesAbove.marks, {
        nearPx: marksTop,
        leaderPx: leaderAbovePx,
        towards: -1,
      }),
      ...markShapes(markedBelow, lanesBelow.marks, {
        nearPx: marksBottom,
        leaderPx: leaderBelowPx,
        towards: 1,
      }),
      ...titleShapes(titles, { isNarrow, upperY, lowerY, heightPx, widthPx }),
    ],
  };
}

/** The pieces of one side that are still to make, each at its target. */
function piecesToMake({ toMake }: FitRulesData, side: 'internal' | 'external') {
  return toMake
    .filter(({ make = 'external' }) => make === side)
    .map((one) => ({ mark: one[side], sizePm: one.targetPm, expandedPm: 0, isToMake: true }));
}

function standing(
  pieces: readonly (FitRulesPiece & { isToMake?: boolean })[],
  xOf: (pm: number) => number,
): Standing[] {
  return pieces
    .map((piece) => ({ ...piece, x: xOf(piece.sizePm), isToMake: piece.isToMake === true }))
    .sort((a, b) => a.x - b.x);
}

/** Higher where marks had to move far from their pieces, so that no leader lies flat. */
function leaderHeightPx(marks: readonly LaneMark[]): number {
  const shifts = marks.map(({ leader }) => Math.abs(leader.at(-2)!.x - leader.at(-1)!.x));
  return Math.min(leaderMostPx, Math.max(leaderLeastPx, ...shifts.map((shift) => shift / 2)));
}

function onlyPair(data: FitRulesData, index: number | undefined): FitRulesData {
  if (index === undefined) return data;
  const ties = data.ties.slice(index, index + 1);
  const first = index - data.ties.length;
  const toMake = first < 0 ? [] : data.toMake.slice(first, first + 1);
  const marks = new Set([...ties, ...toMake].flatMap((tie) => [tie.internal, tie.external]));
  const only = (side: FitRulesSide) => ({
    ...side,
    pieces: side.pieces.filter(({ mark }) => marks.has(mark)),
  });
  return { ...data, ties, toMake, internal: only(data.internal), external: only(data.external) };
}
