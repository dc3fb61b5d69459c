import { pairPieces, type PairingPurpose } from '@/lib/maths/assignment/pair-pieces';
import type { Fit } from '@/lib/schema/fit';
import { cellKey } from './cells';
import { clearanceOf, type ChosenPair, type FitPiece } from './fit-view';

/** The fit's own word for what a pairing is to be best at, and that of the maths. */
const purposes: Record<NonNullable<Fit['purpose']>, PairingPurpose> = {
  'worst best': 'worst-best',
  closest: 'closest',
  'most likely': 'most-likely',
};

/**
 * The best pairing of free, measured pieces for the fit's purpose: the worst pair as near the aim as can be
 * (where none is said), the least sum of distances from the aim, or the surest that all are inside. As many
 * pairs as lie inside the fit's limits come first; pairs a person keeps apart are never chosen.
 */
export function choosePairs(
  internals: readonly FitPiece[],
  externals: readonly FitPiece[],
  fit: Fit,
  apart: ReadonlySet<string>,
): ChosenPair[] {
  if (internals.length === 0 || externals.length === 0) return [];
  const best = pairPieces({
    boresPm: internals.map(({ size }) => size!.valuePm),
    shaftsPm: externals.map(({ size }) => size!.valuePm),
    uBoresPm: internals.map(({ size }) => size!.standardPm),
    uShaftsPm: externals.map(({ size }) => size!.standardPm),
    minPm: fit.minPm,
    maxPm: fit.maxPm,
    aimPm: fit.aimPm,
    forbidden: forbiddenPairs(internals, externals, apart),
    purpose: purposes[fit.purpose ?? 'worst best'],
  });
  return best.pairs.map(({ bore, shaft }): ChosenPair => {
    const clearance = clearanceOf(internals[bore]!, externals[shaft]!, fit)!;
    return { ...clearance, state: 'chosen', pair: null, changedSince: false, flag: null };
  });
}

/** The pairs kept apart by their place in the two lists. */
export function forbiddenPairs(
  internals: readonly FitPiece[],
  externals: readonly FitPiece[],
  apart: ReadonlySet<string>,
): [number, number][] {
  if (apart.size === 0) return [];
  return internals.flatMap((internal, row) =>
    externals.flatMap((external, column): [number, number][] =>
      apart.has(cellKey(internal.piece.id, external.piece.id)) ? [[row, column]] : [],
    ),
  );
}
