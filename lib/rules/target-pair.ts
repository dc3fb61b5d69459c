import type { Target } from './target';

/** The two pieces a target is about, by the side each is on. */
export function targetPair({
  make,
  pieceId,
  partnerId,
}: Pick<Target, 'make' | 'pieceId' | 'partnerId'>) {
  return make === 'external'
    ? { internalPieceId: partnerId, externalPieceId: pieceId }
    : { internalPieceId: pieceId, externalPieceId: partnerId };
}
