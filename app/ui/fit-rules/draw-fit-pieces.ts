import {
  centreEm,
  markLanePx,
  markPx,
  uprightPx,
  type Rule,
  type Shapes,
  type Standing,
} from './fit-metrics';
import type { LaneMark } from './mark-lanes';

/** Pieces stand on their rule; bars alternate between two heights so that neighbours do not merge. */
export function pieceShapes(pieces: readonly Standing[], { y, up, xOf }: Rule): Shapes {
  const ends = [-Infinity, -Infinity];
  let last = 1;
  return pieces
    .filter(({ isToMake }) => !isToMake)
    .flatMap(({ sizePm, expandedPm, x }) => {
      const from = Math.min(xOf(sizePm - expandedPm), x - 3);
      const to = Math.max(xOf(sizePm + expandedPm), x + 3);
      const turn = last === 0 ? 1 : 0;
      const merges = (level: number) => from <= ends[level]! + 1;
      const level = merges(turn) && !merges(1 - turn) ? 1 - turn : turn;
      last = level;
      ends[level] = to;
      const barY = y + up * (10 + 9.5 * level);
      return [
        { kind: 'rect', role: 'bar', x: from, y: barY - 1.5, width: to - from, height: 3 },
        { kind: 'line', role: 'upright', x1: x, y1: y, x2: x, y2: y + up * uprightPx },
      ] satisfies Shapes;
    });
}

/** A piece to make is a notch in its rule. */
export function notchShapes(pieces: readonly Standing[], { y, up }: Rule): Shapes {
  return pieces
    .filter(({ isToMake }) => isToMake)
    .map(({ x }) => ({
      kind: 'path',
      role: 'toMakeNotch',
      d: `M${x - 8} ${y}L${x} ${y + up * 13}L${x + 8} ${y}Z`,
    }));
}

/** Marks outside the rule, each with a leader to its piece. */
export function markShapes(
  pieces: readonly Standing[],
  marks: LaneMark[],
  { nearPx, leaderPx, towards }: { nearPx: number; leaderPx: number; towards: -1 | 1 },
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
        y: middle + markPx * centreEm,
        anchor: 'middle',
        text: mark,
      },
    ] satisfies Shapes;
  });
}
