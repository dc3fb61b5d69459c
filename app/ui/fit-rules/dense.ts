import { bandPx, markPx, type Rule, type Shapes, type Standing } from './fit-metrics';
import type { FitRulesData } from './fit-rules-data';

/** Past this many pieces on a side each is a small block, stacked where they coincide, and few carry a mark. */
export const denseFrom = 41;
/** So many are marked on a side. */
const markedMost = 12;
const blockPx = 2;
const widestPx = 8;
const highestPx = 5;

/** Whether there are too many pieces for uprights, bars and a mark for each. */
export function isDense({ internal, external, toMake }: FitRulesData): boolean {
  const bores = toMake.filter(({ make }) => make === 'internal').length;
  const shafts = toMake.length - bores;
  const most = Math.max(internal.pieces.length + bores, external.pieces.length + shafts);
  return most >= denseFrom;
}

/**
 * Every piece as a block at its own size, to the nearest two px; those that coincide are stacked away from the
 * rule, all within the band. One still to make is hollow.
 */
export function denseShapes(pieces: readonly Standing[], { y, up }: Rule): Shapes {
  const counts = new Map<number, number>();
  const placed = pieces.map(({ x, isToMake }) => {
    const at = blockPx * Math.round(x / blockPx);
    const level = counts.get(at) ?? 0;
    counts.set(at, level + 1);
    return { at, level, isToMake };
  });
  const columns = [...counts.keys()].sort((a, b) => a - b);
  const gaps = columns.slice(1).map((at, index) => at - columns[index]!);
  // Wider where the gauge's own steps leave room, so that a stack is seen to be one.
  const width = Math.min(widestPx, Math.max(blockPx, Math.min(...gaps, widestPx + 2) - 2));
  const pitch = Math.min(highestPx, (bandPx - 4) / Math.max(1, ...counts.values()));
  const height = Math.max(0.5, pitch - 1);
  return placed.map(({ at, level, isToMake }) => {
    const near = y + up * (2 + level * pitch);
    return {
      kind: 'rect',
      role: isToMake ? 'grainToMake' : 'grain',
      x: at - width / 2,
      y: up === -1 ? near - height : near,
      width,
      height,
    };
  });
}

/**
 * The pieces that carry their mark when not all can: without a partner, in a pair that is outside or unsure,
 * the smallest and the largest; twelve at most, or as many as their marks have room for in one lane.
 */
export function markedOf(
  pieces: readonly Standing[],
  data: FitRulesData,
  roomPx: number,
): Standing[] {
  const tied = new Map(
    data.ties.flatMap((tie) => [
      [tie.internal, tie.state],
      [tie.external, tie.state],
    ]),
  );
  const made = new Set(data.toMake.flatMap((one) => [one.internal, one.external]));
  const rank = (piece: Standing, index: number): number => {
    const state = tied.get(piece.mark);
    if (state === undefined && !made.has(piece.mark)) return 0;
    if (state !== undefined && state !== 'inside' && state !== 'near') return 1;
    return index === 0 || index === pieces.length - 1 ? 2 : 3;
  };
  let left = Math.max(1, Math.min(markedMost, Math.floor(roomPx / (3.6 * markPx))));
  const ranks = pieces.map((piece, index) => rank(piece, index));
  const chosen = new Set<number>();
  for (const wanted of [0, 1, 2]) {
    ranks.forEach((own, index) => {
      if (own !== wanted || left === 0) return;
      chosen.add(index);
      left -= 1;
    });
  }
  return pieces.filter((_, index) => chosen.has(index));
}
