import type { Fit, Pair } from '@/lib/schema/fit';
import { cellKey } from './cells';
import type { FitPiece } from './fit-view';
import { targetFor, type Target } from './target';
import { guardFactor } from './verdict';

type Sides = {
  internals: readonly FitPiece[];
  externals: readonly FitPiece[];
  /** Pieces that have a partner, or are promised to one. */
  taken: ReadonlySet<string>;
  /** Pairs a person keeps apart, by `cellKey`. */
  leftOut: ReadonlySet<string>;
};

/**
 * Bores still to make to shafts that are made already, each to its shaft's measured size.
 *
 * A pair a person has locked comes first; then a measured shaft that no bore suits gets the bore of its own
 * number, where that is not measured yet or is too small for it: metal can still come out of it. Any other
 * bore is for a person to choose.
 */
export function boreTargets(
  { internals, externals, taken, leftOut }: Sides,
  locked: readonly Pair[],
  fit: Fit,
): Target[] {
  const byId = new Map([...internals, ...externals].map((one) => [one.piece.id, one]));
  const given = new Set(taken);
  const made: Target[] = [];
  const give = (internal: FitPiece, external: FitPiece) => {
    given.add(internal.piece.id).add(external.piece.id);
    made.push(targetFor(internal, external, fit, 'internal'));
  };
  for (const pair of locked) {
    const internal = byId.get(pair.internalPieceId);
    const external = byId.get(pair.externalPieceId);
    if (internal !== undefined && external !== undefined) give(internal, external);
  }
  for (const external of externals) {
    if (external.size === null || external.stillToCut || external.leftOut) continue;
    if (given.has(external.piece.id)) continue;
    const same = internals.find(({ piece }) => piece.ordinal === external.piece.ordinal);
    if (same === undefined || same.leftOut || given.has(same.piece.id)) continue;
    if (!hasMetal(same, external, fit)) continue;
    if (!leftOut.has(cellKey(same.piece.id, external.piece.id))) give(same, external);
  }
  return made.sort((a, b) => ordinalOf(byId, a) - ordinalOf(byId, b));
}

/** The bore is not measured, or surely too tight for the shaft. */
function hasMetal(internal: FitPiece, external: FitPiece, fit: Fit): boolean {
  if (internal.size === null) return true;
  const clearancePm = internal.size.valuePm - external.size!.valuePm;
  return clearancePm < fit.minPm - guardFactor * internal.size.standardPm;
}

function ordinalOf(byId: ReadonlyMap<string, FitPiece>, { pieceId }: Target): number {
  return byId.get(pieceId)!.piece.ordinal;
}
