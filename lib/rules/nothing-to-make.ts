import type { FitPiece, FitView } from './fit-view';

/** Why a fit has no piece to make to a partner. Pieces by id, in their own order. */
export type NothingToMake =
  /** One side, or both, has no piece at all that takes part. */
  | { kind: 'no pieces' }
  /** No bore is measured: there is nothing to make a shaft to. */
  | { kind: 'measure first'; pieceId: string }
  /** Shafts wait, and every bore that is measured and made is spoken for; `measureId` is one that is not measured. */
  | { kind: 'no partner'; pieceIds: string[]; measureId: string | null }
  /** Nobody waits, but these have no size. */
  | { kind: 'no size'; pieceIds: string[] }
  | { kind: 'all made' };

/** Why there is nothing to make in a fit; null where there is something. */
export function nothingToMake(fit: FitView): NothingToMake | null {
  if (fit.toMake.length > 0 || fit.toBore.length > 0) return null;
  if (fit.internals.length === 0 || fit.externals.length === 0) return { kind: 'no pieces' };
  const paired = new Set(fit.pairs.flatMap((p) => [p.internalPieceId, p.externalPieceId]));
  const isFree = ({ piece, leftOut }: FitPiece) => !leftOut && !paired.has(piece.id);
  const waiting = fit.externals.filter(
    (one) => isFree(one) && (one.size === null || one.stillToCut),
  );
  const unmeasured = fit.internals.filter((one) => isFree(one) && one.size === null);
  const ofItsNumber = unmeasured.find(({ piece }) => piece.ordinal === waiting[0]?.piece.ordinal);
  const measureId = (ofItsNumber ?? unmeasured[0])?.piece.id ?? null;
  if (waiting.length === 0) {
    return unmeasured.length === 0
      ? { kind: 'all made' }
      : { kind: 'no size', pieceIds: unmeasured.map(({ piece }) => piece.id) };
  }
  if (measureId !== null && fit.internals.every(({ size }) => size === null)) {
    return { kind: 'measure first', pieceId: measureId };
  }
  return { kind: 'no partner', pieceIds: waiting.map(({ piece }) => piece.id), measureId };
}
