import { cellKey } from './cells';
import type { JobView } from './job-view';
import type { Target } from './target';

/** What to do next on a job. */
export type NextStep =
  | { kind: 'make'; target: Target; fitId: string; featureId: string }
  | { kind: 'measure'; pieceId: string; featureId: string };

/**
 * The next step of a job: a piece whose partner is measured is made first; else the first feature, in
 * the order of the board, that has no size yet. Null when everything is measured.
 */
export function nextStep(view: Pick<JobView, 'parts' | 'cells' | 'fits'>): NextStep | null {
  for (const { fit, toMake: shafts, toBore, internalFeature, externalFeature } of view.fits) {
    const toMake = [...shafts, ...toBore];
    const started = toMake.find((target) => target.nowPm !== null);
    const target = started ?? toMake[0];
    if (target === undefined) continue;
    const { id: featureId } = target.make === 'external' ? externalFeature : internalFeature;
    return { kind: 'make', target, fitId: fit.id, featureId };
  }
  for (const { pieces, features } of view.parts) {
    for (const feature of features) {
      for (const piece of pieces) {
        if ((piece.fate ?? null) !== null) continue;
        const cell = view.cells.byKey.get(cellKey(piece.id, feature.id));
        if (cell === undefined || cell.size === null) {
          return { kind: 'measure', pieceId: piece.id, featureId: feature.id };
        }
      }
    }
  }
  return null;
}
