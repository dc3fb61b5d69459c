import type { ChosenPair, FitView } from './fit-view';

/** The other final pair of the fit that carries a mark already, or null. No mark at all is nobody's. */
export function pairMarkTaken(
  { pairs }: Pick<FitView, 'pairs'>,
  own: Pick<ChosenPair, 'internalPieceId' | 'externalPieceId'>,
  mark: string,
): ChosenPair | null {
  const wanted = mark.trim().toLowerCase();
  if (wanted === '') return null;
  return (
    pairs.find(
      ({ state, pair, internalPieceId, externalPieceId }) =>
        state === 'final' &&
        !(internalPieceId === own.internalPieceId && externalPieceId === own.externalPieceId) &&
        (pair?.mark ?? '').trim().toLowerCase() === wanted,
    ) ?? null
  );
}
