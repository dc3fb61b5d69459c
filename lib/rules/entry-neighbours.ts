import { counted, type Cell } from './cells';
import type { JobView } from './job-view';

/** So many of the latest pieces speak for a piece nothing was read of yet. */
const others = 6;

/**
 * The readings whose leading figures a few last figures take: those of this feature on this piece since
 * its last cut that count, else the latest of the same feature on the other pieces. pm.
 *
 * Cost: O(readings of this feature).
 */
export function entryNeighbours(
  view: Pick<JobView, 'cells'>,
  cell: Pick<Cell, 'pieceId' | 'featureId' | 'readings'>,
): number[] {
  const here = counted(cell.readings).map(({ valuePm }) => valuePm);
  if (here.length > 0) return here;
  const elsewhere = [...view.cells.byKey.values()].filter(
    (other) => other.featureId === cell.featureId && other.pieceId !== cell.pieceId,
  );
  return elsewhere
    .flatMap((other) => counted(other.readings))
    .sort((a, b) => a.seq - b.seq)
    .slice(-others)
    .map(({ valuePm }) => valuePm);
}
