import { tooClose, type Stretch } from './stretch';
import { textWidth } from './text-width';

export type LabelWish<Role> = {
  role: Role;
  /** Wordings, the longest first; a shorter one is taken before the label is dropped. */
  texts: readonly string[];
  /** What it stands over, px. */
  over: Stretch;
};

export type PlacedLabel<Role> = { role: Role; text: string; x: number; stretch: Stretch };

/**
 * Labels of one lane, placed so that none touches another.
 *
 * In order of importance. Each stands over the middle of its thing; if that is taken it moves aside, but
 * never off its thing; then a shorter wording is tried; then it is dropped. All stay within the width.
 */
export function placeLabels<Role>(
  wishes: readonly LabelWish<Role>[],
  lane: { widthPx: number; sizePx: number; gapPx: number; taken?: readonly Stretch[] },
): PlacedLabel<Role>[] {
  const placed: PlacedLabel<Role>[] = [];
  const taken: Stretch[] = [...(lane.taken ?? [])];
  for (const { role, texts, over } of wishes) {
    for (const text of texts) {
      const stretch = freePlace(textWidth({ text, sizePx: lane.sizePx }), over, lane, taken);
      if (stretch === undefined) continue;
      placed.push({ role, text, x: (stretch.from + stretch.to) / 2, stretch });
      taken.push(stretch);
      break;
    }
  }
  return placed;
}

/** The free place nearest to the middle of what it stands over. */
function freePlace(
  width: number,
  over: Stretch,
  { widthPx, gapPx }: { widthPx: number; gapPx: number },
  taken: readonly Stretch[],
): Stretch | undefined {
  const clamp = (from: number) => Math.min(Math.max(0, from), widthPx - width);
  const wished = clamp((over.from + over.to - width) / 2);
  const beside = taken.flatMap((other) => [other.to + gapPx, other.from - gapPx - width]);
  return [wished, ...beside]
    .map((from) => ({ from, to: from + width }))
    .filter(({ from, to }) => from >= 0 && to <= widthPx)
    .filter(({ from, to }) => from <= over.to && to >= over.from)
    .filter((stretch) => !taken.some((other) => tooClose(stretch, other, gapPx - 0.001)))
    .sort((a, b) => Math.abs(a.from - wished) - Math.abs(b.from - wished))[0];
}
