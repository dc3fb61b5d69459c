import { textWidth } from '../strip/text-width';

export type Segment = { x1: number; y1: number; x2: number; y2: number };
export type Box = { x: number; y: number; width: number; height: number };
export type TieLabel = { text: string; box: Box };

const shares = [0.5, 0.34, 0.66, 0.22, 0.78];
const besidePx = 8;

/**
 * The clearance beside each tie: on the right at half height, else on the left, else higher or lower, so that
 * it touches no tie and no other figure; `padPx` is the room of a box about it. Null where there is no room at all: the table still says it.
 */
export function tieLabels(
  ties: readonly { text: string; line: Segment; padPx: number }[],
  area: { fromPx: number; toPx: number; sizePx: number },
): (TieLabel | null)[] {
  const lines = ties.map(({ line }) => line);
  const placed: Box[] = [];
  return ties.map(({ text, line, padPx }) => {
    const width = textWidth({ text, sizePx: area.sizePx }) + 2 * padPx;
    const height = area.sizePx + padPx;
    const box = shares
      .flatMap((share) => {
        const x = line.x1 + share * (line.x2 - line.x1);
        const y = line.y1 + share * (line.y2 - line.y1) - height / 2;
        const lean = Math.abs((line.x2 - line.x1) / (line.y2 - line.y1)) * (height / 2);
        const clear = besidePx + lean;
        return [
          { x: x + clear, y, width, height },
          { x: x - clear - width, y, width, height },
        ];
      })
      .find(
        (candidate) =>
          candidate.x >= area.fromPx &&
          candidate.x + width <= area.toPx &&
          !lines.some((other) => crosses(grown(candidate, 3), other)) &&
          !placed.some((other) => overlaps(grown(candidate, 3), other)),
      );
    if (box === undefined) return null;
    placed.push(box);
    return { text, box };
  });
}

function grown({ x, y, width, height }: Box, by: number): Box {
  return { x: x - by, y: y - by, width: width + 2 * by, height: height + 2 * by };
}

function overlaps(a: Box, b: Box): boolean {
  return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
}

/** Whether a line that runs downward passes through a box. */
function crosses(box: Box, { x1, y1, x2, y2 }: Segment): boolean {
  const top = Math.max(box.y, Math.min(y1, y2));
  const bottom = Math.min(box.y + box.height, Math.max(y1, y2));
  if (top > bottom) return false;
  const xAt = (y: number) => (y2 === y1 ? x1 : x1 + ((y - y1) / (y2 - y1)) * (x2 - x1));
  const left = Math.min(xAt(top), xAt(bottom));
  const right = Math.max(xAt(top), xAt(bottom));
  return left <= box.x + box.width && right >= box.x;
}
