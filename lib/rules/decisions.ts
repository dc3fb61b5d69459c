import { cellKey } from './cells';
import type { JobView } from './job-view';

/** A thing only a person can settle; `lib/text` has the words. */
export type Decision =
  | {
      kind: 'out' | 'unsure' | 'held';
      pieceId: string;
      featureId: string;
      /** How far beyond its limit, pm; 0 where it is not beyond. */
      beyondPm: number;
      side: 'top' | 'bottom' | null;
    }
  | { kind: 'no partner'; pieceId: string; fitId: string }
  | { kind: 'pair changed'; pairId: string; fitId: string };

/** Everything in a job that waits for a decision, in the order of the board. */
export function decisionsOf(view: Pick<JobView, 'parts' | 'cells' | 'fits'>): Decision[] {
  const ofCells = view.parts.flatMap(({ pieces, features }) =>
    pieces.flatMap((piece) =>
      features.flatMap((feature): Decision[] => {
        const cell = view.cells.byKey.get(cellKey(piece.id, feature.id));
        if (cell === undefined || (piece.fate ?? null) !== null) return [];
        const at = { pieceId: piece.id, featureId: feature.id };
        const held: Decision[] = cell.readings.some((reading) => reading.state === 'held')
          ? [{ kind: 'held', ...at, beyondPm: 0, side: null }]
          : [];
        const { verdict } = cell;
        if (verdict?.state !== 'out' && verdict?.state !== 'unsure') return held;
        const { state: kind, beyondPm, side } = verdict;
        return [...held, { kind, ...at, beyondPm, side }];
      }),
    ),
  );
  const ofFits = view.fits.flatMap(({ fit, withoutPartner, pairs }): Decision[] => [
    ...withoutPartner.map((pieceId): Decision => ({ kind: 'no partner', pieceId, fitId: fit.id })),
    ...pairs
      .filter((pair) => pair.changedSince)
      .map((pair): Decision => ({ kind: 'pair changed', pairId: pair.pair!.id, fitId: fit.id })),
  ]);
  return [...ofCells, ...ofFits];
}
