import type { JobSheet } from '@/lib/schema/sheet';
import { cellKey, type Cells } from './cells';

/** How many pieces of a job are made, of how many. */
export type Progress = {
  made: number;
  of: number;
  byPart: Map<string, { made: number; of: number }>;
};

/**
 * A piece counts as made when the first feature of its part has a size with no metal left to come off.
 * A part without features counts no piece as made. Struck and scrapped pieces are not counted at all.
 */
export function progressOf(
  sheet: Pick<JobSheet, 'parts' | 'pieces' | 'features'>,
  cells: Cells,
  stillToCut: ReadonlySet<string>,
): Progress {
  const first = new Map<string, string>();
  for (const feature of [...sheet.features].sort((a, b) => a.position - b.position)) {
    if (feature.struckAt === null && !first.has(feature.partId)) {
      first.set(feature.partId, feature.id);
    }
  }
  const byPart = new Map<string, { made: number; of: number }>();
  for (const piece of sheet.pieces) {
    if (piece.struckAt !== null || piece.fate === 'scrapped') continue;
    const tally = byPart.get(piece.partId) ?? { made: 0, of: 0 };
    const featureId = first.get(piece.partId);
    const cell =
      featureId === undefined ? undefined : cells.byKey.get(cellKey(piece.id, featureId));
    const made =
      (piece.fate ?? null) === null &&
      cell !== undefined &&
      cell.size !== null &&
      cell.verdict?.state !== 'to cut' &&
      !stillToCut.has(piece.id);
    byPart.set(piece.partId, { made: tally.made + (made ? 1 : 0), of: tally.of + 1 });
  }
  const sum = (key: 'made' | 'of') => [...byPart.values()].reduce((n, t) => n + t[key], 0);
  return { made: sum('made'), of: sum('of'), byPart };
}
