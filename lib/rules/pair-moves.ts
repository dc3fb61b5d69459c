import { clearanceOf, type Clearance, type FitView } from './fit-view';
import type { Target } from './target';

/** Who goes with whom: by external piece, the internal piece it is paired with. */
export type Partners = Record<string, string>;

/** An external piece that has another partner than when the pairing was last looked at, or none. */
export type PairMove = {
  externalPieceId: string;
  /** What it would be with its partner of then, as both are measured now; null where that is not known. */
  from: { internalPieceId: string; clearance: Clearance | null; goneTo: string | null };
  /** What it has now; null where it has no partner. */
  to: { internalPieceId: string; clearance: Clearance } | null;
};

export function partnersOf({ pairs }: Pick<FitView, 'pairs'>): Partners {
  return Object.fromEntries(
    pairs.map(({ internalPieceId, externalPieceId }) => [externalPieceId, internalPieceId]),
  );
}

/**
 * The pieces that changed partners between two pairings, in the order of the internal pieces they left.
 * A piece that found its first partner has not moved, nor has one that a person keeps for a partner it, or that,
 * is still to be made to. `goneTo` is the external piece that has the old partner now.
 */
export function pairMoves(before: Partners, fit: FitView): PairMove[] {
  const now = new Map(fit.pairs.map((pair) => [pair.externalPieceId, pair]));
  const kept = keptToMake(fit);
  const holder = new Map([
    ...fit.pairs.map((pair) => [pair.internalPieceId, pair.externalPieceId] as const),
    ...kept.map(([outer, inner]) => [inner, outer] as const),
  ]);
  const keptOuter = new Set(kept.map(([outer]) => outer));
  const external = new Map(fit.externals.map((one) => [one.piece.id, one]));
  const left = new Map(Object.entries(before).map(([outer, inner]) => [inner, outer]));
  return fit.internals.flatMap((internal): PairMove[] => {
    const internalPieceId = internal.piece.id;
    const externalPieceId = left.get(internalPieceId);
    const piece = externalPieceId === undefined ? undefined : external.get(externalPieceId);
    if (externalPieceId === undefined || piece === undefined) return [];
    const pair = now.get(externalPieceId);
    if (pair?.internalPieceId === internalPieceId || keptOuter.has(externalPieceId)) return [];
    const clearance = clearanceOf(internal, piece, fit.fit);
    const goneTo = holder.get(internalPieceId) ?? null;
    const to =
      pair === undefined ? null : { internalPieceId: pair.internalPieceId, clearance: pair };
    return [{ externalPieceId, from: { internalPieceId, clearance, goneTo }, to }];
  });
}

/** External and internal piece of each pair that a person keeps together while one of the two is still to be made. */
function keptToMake({ toMake, toBore, lockedToMake }: FitView): [string, string][] {
  const isKept = ({ pieceId, partnerId }: Target) =>
    lockedToMake.has(pieceId) && lockedToMake.has(partnerId);
  return [
    ...toMake
      .filter(isKept)
      .map(({ pieceId, partnerId }): [string, string] => [pieceId, partnerId]),
    ...toBore
      .filter(isKept)
      .map(({ pieceId, partnerId }): [string, string] => [partnerId, pieceId]),
  ];
}
