import type { JobSheet } from '@/lib/schema/sheet';
import { cellKey, counted, type Cells } from './cells';
import type { FitView } from './fit-view';

/** The people whose readings tell the sizes of a fit, by id, in the order they first read one. */
export function measuredBy(
  { cells, sheet }: { cells: Cells; sheet: Pick<JobSheet, 'readings'> },
  { internals, externals, internalFeature, externalFeature }: FitView,
): string[] {
  const telling = new Set(
    (
      [
        [internals, internalFeature],
        [externals, externalFeature],
      ] as const
    ).flatMap(([pieces, feature]) =>
      pieces.flatMap(({ piece, size }) => {
        const cell = cells.byKey.get(cellKey(piece.id, feature.id));
        if (size === null || cell === undefined) return [];
        return counted(cell.readings).flatMap(({ id, gaugeId }) =>
          gaugeId === size.gaugeId ? [id] : [],
        );
      }),
    ),
  );
  const people = sheet.readings.flatMap(({ id, personId }) =>
    personId !== null && telling.has(id) ? [personId] : [],
  );
  return [...new Set(people)];
}
