import type { ChosenPair, FitView } from './fit-view';
import { samePairMark } from './same-pair-mark';

/** The other final pair of the fit that carries a mark already, or null. No mark at all is nobody's. */
export function pairMarkTaken(
  { pairs }: Pick<FitView, 'pairs'>,
  own: Pick<ChosenPair, 'internalPieceId' | 'externalPieceId'>,
  mark: string,
): ChosenPair | null {
  return (
    pairs.find(
      ({ state, pair, internalPieceId, externalPieceId }) =>
        state === 'final' &&
        !(internalPieceId === own.internalPieceId && externalPieceId === own.externalPieceId) &&
        samePairMark(pair?.mark ?? '', mark),
    ) ?? null
  );
}
