import type { JobView } from './job-view';
import type { EntryCell } from './entry-order';

/** What may say where to begin, the first that still exists. */
export type EntryWishes = {
  /** The address asked for this piece or feature, or both. */
  asked: { pieceId: string | null; featureId: string | null };
  /** Where this device stopped. */
  stopped: EntryCell | null;
};

/**
 * Where the Bench opens: where the address says, where the person stopped, what is next, the first cell.
 *
 * An address with a piece alone takes the feature the device stopped at if the piece has it, else the
 * first of the piece with something to read; with a feature alone, the first piece with something to
 * read. Null when no piece of the job has a feature.
 */
export function entryStart(
  view: Pick<JobView, 'parts' | 'cells' | 'fits' | 'next'>,
  { asked, stopped }: EntryWishes,
): EntryCell | null {
  const cells = view.parts.flatMap(({ pieces, features }) =>
    pieces.flatMap((piece) =>
      features.map((feature): EntryCell => ({ pieceId: piece.id, featureId: feature.id })),
    ),
  );
  const find = (wanted: Partial<EntryCell>) =>
    cells.filter(
      (cell) =>
        (wanted.pieceId === undefined || cell.pieceId === wanted.pieceId) &&
        (wanted.featureId === undefined || cell.featureId === wanted.featureId),
    );
  const open = (list: EntryCell[]) =>
    list.find((cell) => !view.cells.byKey.has(`${cell.pieceId} ${cell.featureId}`)) ?? list[0];

  const { pieceId, featureId } = asked;
  if (pieceId !== null && featureId !== null) {
    const both = find({ pieceId, featureId })[0];
    if (both !== undefined) return both;
  }
  if (pieceId !== null) {
    const same = stopped === null ? [] : find({ pieceId, featureId: stopped.featureId });
    const found = same[0] ?? open(find({ pieceId }));
    if (found !== undefined) return found;
  }
  if (featureId !== null) {
    const found = open(find({ featureId }));
    if (found !== undefined) return found;
  }
  return (
    (stopped === null ? undefined : find(stopped)[0]) ?? nextCell(view, find) ?? cells[0] ?? null
  );
}

function nextCell(
  { next, fits }: Pick<JobView, 'fits' | 'next'>,
  find: (wanted: Partial<EntryCell>) => EntryCell[],
): EntryCell | undefined {
  if (next === null) return undefined;
  if (next.kind === 'measure') return find(next)[0];
  const made = fits.find(({ fit }) => fit.id === next.fitId);
  if (made === undefined) return undefined;
  return find({ pieceId: next.target.pieceId, featureId: made.externalFeature.id })[0];
}
