import type { PartView } from './job-view';

/** What is measured after a feature is done: the rest of the piece, or the same on every piece. */
export type EntryOrder = 'all of a piece' | 'this feature on every piece';

/** One feature on one piece. */
export type EntryCell = { pieceId: string; featureId: string };

/**
 * The cell before or after another in the order of measuring; null at the ends of the job.
 *
 * `pass` may name cells to step over: those with nothing left to read. Parts keep the order of the
 * board. Cost: O(cells of the job).
 */
export function entryOrder(
  parts: readonly PartView[],
  order: EntryOrder,
  at: EntryCell,
  by: 1 | -1,
  pass: (cell: EntryCell) => boolean = () => false,
): EntryCell | null {
  const cells = parts.flatMap(({ pieces, features }) =>
    order === 'all of a piece'
      ? pieces.flatMap((piece) => features.map((feature) => cellOf(piece.id, feature.id)))
      : features.flatMap((feature) => pieces.map((piece) => cellOf(piece.id, feature.id))),
  );
  const start = cells.findIndex((c) => c.pieceId === at.pieceId && c.featureId === at.featureId);
  if (start < 0) return null;
  for (let index = start + by; index >= 0 && index < cells.length; index += by) {
    if (!pass(cells[index]!)) return cells[index]!;
  }
  return null;
}

function cellOf(pieceId: string, featureId: string): EntryCell {
  return { pieceId, featureId };
}
