/** A stretch of a horizontal line, px. */
export type Stretch = { from: number; to: number };

/** A stretch of this width with its middle at `x`. */
export function about(x: number, width: number): Stretch {
  return { from: x - width / 2, to: x + width / 2 };
}

/** The part between 0 and the width; null where nothing of it is left. */
export function clipped({ from, to }: Stretch, widthPx: number): Stretch | null {
  const inside = { from: Math.max(0, from), to: Math.min(widthPx, to) };
  return inside.to > inside.from ? inside : null;
}

/** Whether two stretches are less than `gapPx` apart. */
export function tooClose(a: Stretch, b: Stretch, gapPx: number): boolean {
  return a.from < b.to + gapPx && b.from < a.to + gapPx;
}

/** The same ground in as few stretches as it takes, from left to right. */
export function merged(stretches: readonly Stretch[]): Stretch[] {
  const result: Stretch[] = [];
  for (const stretch of [...stretches].sort((a, b) => a.from - b.from)) {
    const last = result.at(-1);
    if (last !== undefined && stretch.from <= last.to) last.to = Math.max(last.to, stretch.to);
    else result.push({ ...stretch });
  }
  return result;
}

/** What is left of a stretch once the gaps are taken out. */
export function without(whole: Stretch, gaps: readonly Stretch[]): Stretch[] {
  let left = [whole];
  for (const gap of gaps) {
    left = left.flatMap(({ from, to }) => [
      { from, to: Math.min(to, gap.from) },
      { from: Math.max(from, gap.to), to },
    ]);
  }
  return left.filter(({ from, to }) => to > from);
}
