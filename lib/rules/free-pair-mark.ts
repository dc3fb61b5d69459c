import type { ChosenPair, FitView } from './fit-view';
import { pairMarkTaken } from './pair-mark-taken';

/**
 * A pair mark that no other final pair of the fit carries: the number of the internal piece, or else the next
 * one that is free.
 */
export function freePairMark(
  fit: Pick<FitView, 'pairs' | 'every'>,
  own: Pick<ChosenPair, 'internalPieceId' | 'externalPieceId'>,
): string {
  let number = fit.every.get(own.internalPieceId)?.piece.ordinal ?? 1;
  while (pairMarkTaken(fit, own, String(number)) !== null) number += 1;
  return String(number);
}
