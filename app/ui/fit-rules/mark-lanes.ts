import { textWidth } from '../strip/text-width';

export type LaneMark = {
  /** Index of the piece it belongs to. */
  index: number;
  /** 0 is nearest to the rule. */
  lane: number;
  /** Middle of the mark, px. */
  x: number;
  /** From the mark down to its piece, px: the height is the lane it crosses, `rule` at the end. */
  leader: { x: number; lane: number | 'rule' }[];
};

const gapPx = 8;
const leaderPx = 5;
const mostInOneLane = 12;

/**
 * Marks of pieces in as few lanes as it takes, none touching another and no leader crossing a mark.
 *
 * Twelve to a lane at most, in turn from left to right. In each lane the marks, and the leaders that come down
 * through it from the lanes behind, keep their order and are spread apart as little as it takes.
 */
export function markLanes(
  pieces: readonly { mark: string; x: number }[],
  area: { fromPx: number; toPx: number; sizePx: number },
): { lanes: number; marks: LaneMark[] } {
  const order = pieces.map((piece, index) => ({ ...piece, index })).sort((a, b) => a.x - b.x);
  const widthOf = (mark: string) => textWidth({ text: mark, sizePx: area.sizePx });
  const roomPx = area.toPx - area.fromPx;
  let lanes = Math.max(1, Math.ceil(order.length / mostInOneLane));
  const needPx = (count: number) =>
    order.reduce(
      (sum, piece, i) => sum + (i % count === 0 ? widthOf(piece.mark) : leaderPx) + gapPx,
      0,
    );
  while (lanes < order.length && needPx(lanes) > roomPx) lanes += 1;

  const at = order.map((piece) => piece.x);
  const marks: LaneMark[] = order.map(({ index, x }, i) => ({
    index,
    lane: i % lanes,
    x,
    leader: [{ x, lane: 'rule' }],
  }));
  for (let lane = 0; lane < lanes; lane += 1) {
    const here = marks.map((_, i) => i).filter((i) => i % lanes >= lane);
    const widths = here.map((i) => (i % lanes === lane ? widthOf(order[i]!.mark) : leaderPx));
    const spread = spreadApart(
      here.map((i) => at[i]!),
      widths,
      area,
    );
    here.forEach((i, n) => {
      at[i] = spread[n]!;
      marks[i]!.x = spread[n]!;
      marks[i]!.leader.unshift({ x: spread[n]!, lane });
    });
  }
  return { lanes, marks };
}

/**
 * Middles moved apart until neighbours are `gapPx` clear, as little as it takes: those that touch are
 * gathered into blocks, each block about the mean of what its members wished (pool adjacent violators).
 */
function spreadApart(
  wished: readonly number[],
  widths: readonly number[],
  { fromPx, toPx }: { fromPx: number; toPx: number },
): number[] {
  type Block = { first: number; count: number; start: number; width: number; wishes: number };
  const blocks: Block[] = [];
  wished.forEach((x, i) => {
    const width = widths[i]!;
    let block: Block = { first: i, count: 1, start: x - width / 2, width, wishes: x - width / 2 };
    let last = blocks.at(-1);
    while (last !== undefined && last.start + last.width + gapPx > block.start) {
      blocks.pop();
      const offset = last.width + gapPx;
      const wishes = last.wishes + block.wishes - block.count * offset;
      const count = last.count + block.count;
      block = {
        first: last.first,
        count,
        start: wishes / count,
        width: offset + block.width,
        wishes,
      };
      last = blocks.at(-1);
    }
    blocks.push(block);
  });
  const result: number[] = [];
  for (const { first, count, start } of blocks) {
    let x = start;
    for (let i = first; i < first + count; i += 1) {
      result.push(x + widths[i]! / 2);
      x += widths[i]! + gapPx;
    }
  }
  return keptInside(result, widths, fromPx, toPx);
}

function keptInside(
  middles: readonly number[],
  widths: readonly number[],
  fromPx: number,
  toPx: number,
): number[] {
  const inside = [...middles];
  let edge = fromPx;
  for (let i = 0; i < inside.length; i += 1) {
    inside[i] = Math.max(inside[i]!, edge + widths[i]! / 2);
    edge = inside[i]! + widths[i]! / 2 + gapPx;
  }
  edge = toPx;
  for (let i = inside.length - 1; i >= 0; i -= 1) {
    inside[i] = Math.min(inside[i]!, edge - widths[i]! / 2);
    edge = inside[i]! - widths[i]! / 2 - gapPx;
  }
  return inside;
}
