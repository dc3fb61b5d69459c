import { bottleneck } from '@/lib/maths/assignment/bottleneck';
import { costMatrix } from '@/lib/maths/assignment/cost-matrix';
import type { Fit } from '@/lib/schema/fit';
import { cellKey } from './cells';
import { clearanceOf, type ChosenPair, type FitPiece } from './fit-view';

/**
 * The pairing of free, measured pieces whose worst pair is best: the largest departure from the aim is
 * as small as it can be, and among those the sum is least. As many pairs as lie inside the fit's limits;
 * pairs left out by a person are never chosen. Exact; cost O(n^3) in the number of pieces.
 */
export function choosePairs(
  internals: readonly FitPiece[],
  externals: readonly FitPiece[],
  fit: Fit,
  leftOut: ReadonlySet<string>,
): ChosenPair[] {
  if (internals.length === 0 || externals.length === 0) return [];
  const costs = internals.map((internal) =>
    externals.map((external) => {
      if (leftOut.has(cellKey(internal.piece.id, external.piece.id))) return null;
      const clearancePm = internal.size!.valuePm - external.size!.valuePm;
      if (clearancePm < fit.minPm || clearancePm > fit.maxPm) return null;
      return Math.abs(clearancePm - fit.aimPm);
    }),
  );
  const best = bottleneck(costMatrix(costs));
  return (best?.pairs ?? []).map(([row, column]): ChosenPair => {
    const clearance = clearanceOf(internals[row]!, externals[column]!, fit)!;
    return { ...clearance, state: 'chosen', pair: null, changedSince: false };
  });
}
