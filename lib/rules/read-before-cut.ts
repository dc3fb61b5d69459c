import type { JobSheet } from '@/lib/schema/sheet';
import type { Cell } from './cells';
import type { Standing } from './standing';

/**
 * Counted readings that came into the book after the cut noted last, from another device than it, and were taken
 * before it by the clocks of the two: a device that was out of reach sent them late. They count for the new size,
 * as the book has them; only a person can say whether they tell the old one.
 */
export function readBeforeCut(
  { readings, cuts }: Pick<JobSheet, 'readings' | 'cuts'>,
  cell: Pick<Cell, 'pieceId' | 'featureId' | 'readings'>,
): Standing[] {
  const cut = cuts
    .filter(
      ({ pieceId, featureId, struckAt }) =>
        pieceId === cell.pieceId && featureId === cell.featureId && struckAt === null,
    )
    .toSorted((a, b) => a.ordinal - b.ordinal)
    .at(-1);
  if (cut === undefined || !cut.deviceTime || !cut.deviceId) return [];
  const cutMs = Date.parse(cut.deviceTime);
  return cell.readings.filter(
    ({ id, state, deviceTime }) =>
      state === 'counted' &&
      Date.parse(deviceTime) < cutMs &&
      readings.findLast((row) => row.id === id)?.deviceId !== cut.deviceId,
  );
}
