import type { EntryCell } from './entry-order';
import type { PartView } from './job-view';

/**
 * The next or previous feature of the piece on the bench, or the next or previous piece of its part with the
 * same feature, whatever the order of measuring is; null at either end.
 */
export function entryAlong(
  parts: readonly PartView[],
  at: EntryCell,
  what: 'features' | 'pieces',
  by: 1 | -1,
): EntryCell | null {
  const part = parts.find(({ pieces }) => pieces.some(({ id }) => id === at.pieceId));
  if (part === undefined) return null;
  const ids = part[what].map(({ id }) => id);
  const here = ids.indexOf(what === 'features' ? at.featureId : at.pieceId);
  const id = here < 0 ? undefined : ids[here + by];
  if (id === undefined) return null;
  return what === 'features' ? { ...at, featureId: id } : { ...at, pieceId: id };
}
