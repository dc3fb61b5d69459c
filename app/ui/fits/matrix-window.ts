/** A stretch of rows or columns: from the first to before the last. */
export type Stretch = { from: number; to: number };

/**
 * Which rows (or columns) of a long table are drawn: those in view and a few beyond, in whole blocks, so that
 * scrolling within a block draws nothing anew.
 */
export function matrixWindow(
  at: { scrollPx: number; viewPx: number },
  table: { cellPx: number; count: number; block: number },
): Stretch {
  const { cellPx, count, block } = table;
  const first = Math.floor(Math.max(0, at.scrollPx) / cellPx);
  const last = Math.ceil((Math.max(0, at.scrollPx) + at.viewPx) / cellPx);
  const from = Math.max(0, (Math.floor(first / block) - 1) * block);
  const to = Math.min(count, (Math.ceil(last / block) + 1) * block);
  return { from: Math.min(from, to), to };
}

/** The numbers of a stretch that exist, and one outside it that is to be there too: the one that has the focus. */
export function drawnOf(stretch: Stretch, also: number, count: number): number[] {
  const from = Math.min(stretch.from, count);
  const to = Math.min(stretch.to, count);
  const all = Array.from({ length: to - from }, (_, index) => from + index);
  if (also < 0 || also >= count || (also >= from && also < to)) return all;
  return also < from ? [also, ...all] : [...all, also];
}
