import { pairClearance } from '@/lib/maths/fit/pair-clearance';
import type { Fit, Pair } from '@/lib/schema/fit';
import type { Feature } from '@/lib/schema/feature';
import type { Piece } from '@/lib/schema/part';
import { cellKey, type Cells } from './cells';
import { choosePairs } from './choose-pairs';
import { governingSize, type GoverningSize } from './governing-size';
import { targetFor, type Target } from './target';
import { guardFactor, verdictOf, type Verdict } from './verdict';

/** One piece on its side of a fit. */
export type FitPiece = {
  piece: Piece;
  /** The size that decides the fit; null while it is not known. */
  size: GoverningSize | null;
  /** Metal is still to come off before it suits any partner; it takes no part in the pairing. */
  stillToCut: boolean;
};

/** The clearance of one internal with one external piece, pm; negative is interference. */
export type Clearance = {
  internalPieceId: string;
  externalPieceId: string;
  clearancePm: number;
  standardPm: number;
  verdict: Verdict;
};

export type ChosenPair = Clearance & {
  /** `final` and `locked` were decided by a person, `chosen` by the pairing. */
  state: 'final' | 'locked' | 'chosen';
  pair: Pair | null;
  /** A final pair whose clearance has since moved away from what was recorded. */
  changedSince: boolean;
};

export type FitView = {
  fit: Fit;
  internalFeature: Feature;
  externalFeature: Feature;
  internals: FitPiece[];
  externals: FitPiece[];
  /** Decided and chosen pairs, in the order of the internal pieces. */
  pairs: ChosenPair[];
  /** Pieces still to make, each to its partner's measured size. */
  toMake: Target[];
  /** Pairs a person has left out, by `cellKey` of internal and external piece. */
  leftOut: ReadonlySet<string>;
  /** Measured pieces that suit no free partner. */
  withoutPartner: string[];
};

/**
 * One fit of a job as it stands: sizes, the pairing whose worst pair is best, and what is still to make.
 *
 * Pairs a person has made final or locked stand; pairs left out are never chosen. An external piece
 * that is larger (an internal that is smaller) than any free partner allows is still to cut. Partners
 * for pieces to make are the free measured ones: the one of the same number first, then in order.
 */
export function fitView(
  fit: Fit,
  features: ReadonlyMap<string, Feature>,
  pieces: readonly Piece[],
  pairs: readonly Pair[],
  cells: Cells,
): FitView | null {
  const internalFeature = features.get(fit.internalFeatureId);
  const externalFeature = features.get(fit.externalFeatureId);
  if (internalFeature === undefined || externalFeature === undefined) return null;

  const side = (feature: Feature, which: 'internal' | 'external'): FitPiece[] =>
    pieces
      .filter((piece) => piece.partId === feature.partId && piece.struckAt === null)
      .sort((a, b) => a.ordinal - b.ordinal)
      .map((piece) => {
        const cell = cells.byKey.get(cellKey(piece.id, feature.id));
        const size = governingSize(cell, which, fit.governs, cells.gauges, cells.history);
        return { piece, size, stillToCut: false };
      });
  const internals = side(internalFeature, 'internal');
  const externals = side(externalFeature, 'external');

  const ours = pairs.filter((pair) => pair.fitId === fit.id && pair.struckAt === null);
  const decided = decidedPairs(ours, internals, externals, fit);
  const taken = new Set(decided.flatMap((p) => [p.internalPieceId, p.externalPieceId]));
  markStillToCut(internals, externals, taken, fit);
  const free = (list: FitPiece[]) =>
    list.filter(
      ({ piece, size, stillToCut }) => size !== null && !stillToCut && !taken.has(piece.id),
    );

  const leftOut = new Set(
    ours
      .filter((pair) => pair.state === 'left out')
      .map((pair) => cellKey(pair.internalPieceId, pair.externalPieceId)),
  );
  const chosen = choosePairs(free(internals), free(externals), fit, leftOut);
  for (const pair of chosen) taken.add(pair.internalPieceId).add(pair.externalPieceId);

  const order = new Map(internals.map(({ piece }, index) => [piece.id, index]));
  const all = [...decided, ...chosen].sort(
    (a, b) => order.get(a.internalPieceId)! - order.get(b.internalPieceId)!,
  );
  const toMake = targets(internals, externals, taken, fit);
  const promised = new Set(toMake.flatMap((t) => [t.pieceId, t.partnerId]));
  const withoutPartner = [...free(internals), ...free(externals)]
    .map(({ piece }) => piece.id)
    .filter((id) => !taken.has(id) && !promised.has(id));
  return {
    fit,
    internalFeature,
    externalFeature,
    internals,
    externals,
    pairs: all,
    toMake,
    leftOut,
    withoutPartner,
  };
}

/** The clearance of two measured pieces, judged by the fit's limits and both uncertainties. */
export function clearanceOf(internal: FitPiece, external: FitPiece, fit: Fit): Clearance | null {
  if (internal.size === null || external.size === null) return null;
  const { clearancePm, uPm } = pairClearance({
    bore: { sizePm: internal.size.valuePm, uPm: internal.size.standardPm },
    shaft: { sizePm: external.size.valuePm, uPm: external.size.standardPm },
    fit,
  });
  const size = { valuePm: clearancePm, standardPm: uPm };
  return {
    internalPieceId: internal.piece.id,
    externalPieceId: external.piece.id,
    clearancePm,
    standardPm: uPm,
    // A clearance is nobody's metal: too wide and too tight are both out.
    verdict: verdictOf(size, { lowerPm: fit.minPm, upperPm: fit.maxPm }, 'position')!,
  };
}

function decidedPairs(
  ours: readonly Pair[],
  internals: readonly FitPiece[],
  externals: readonly FitPiece[],
  fit: Fit,
): ChosenPair[] {
  const byId = new Map([...internals, ...externals].map((entry) => [entry.piece.id, entry]));
  return ours.flatMap((pair): ChosenPair[] => {
    if (pair.state !== 'final' && pair.state !== 'locked') return [];
    const internal = byId.get(pair.internalPieceId);
    const external = byId.get(pair.externalPieceId);
    if (internal === undefined || external === undefined) return [];
    const now = clearanceOf(internal, external, fit);
    if (now === null && pair.state === 'locked') return [];
    const recordedPm = pair.clearancePm ?? 0;
    const clearance: Clearance = now ?? {
      internalPieceId: internal.piece.id,
      externalPieceId: external.piece.id,
      clearancePm: recordedPm,
      standardPm: (pair.uncertaintyPm ?? 0) / 2,
      verdict: { state: 'unsure', side: null, beyondPm: 0, limitPm: null },
    };
    const changedSince = pair.state === 'final' && (now === null || now.clearancePm !== recordedPm);
    return [{ ...clearance, state: pair.state, pair, changedSince }];
  });
}

function markStillToCut(
  internals: FitPiece[],
  externals: FitPiece[],
  taken: ReadonlySet<string>,
  fit: Fit,
): void {
  const freeSizes = (list: FitPiece[]) =>
    list.filter(({ piece, size }) => size !== null && !taken.has(piece.id)).map((p) => p.size!);
  const largestBore = Math.max(...freeSizes(internals).map((size) => size.valuePm));
  for (const external of externals) {
    if (external.size === null || taken.has(external.piece.id)) continue;
    const clearancePm = largestBore - external.size.valuePm;
    external.stillToCut = clearancePm < fit.minPm - guardFactor * external.size.standardPm;
  }
}

function targets(
  internals: readonly FitPiece[],
  externals: readonly FitPiece[],
  taken: ReadonlySet<string>,
  fit: Fit,
): Target[] {
  const partners = internals.filter(({ piece, size }) => size !== null && !taken.has(piece.id));
  const waiting = externals.filter(
    ({ piece, size, stillToCut }) => (size === null || stillToCut) && !taken.has(piece.id),
  );
  const free = new Map(partners.map((partner) => [partner.piece.ordinal, partner]));
  const same = waiting.flatMap((external) => {
    const partner = free.get(external.piece.ordinal);
    if (partner === undefined) return [];
    free.delete(external.piece.ordinal);
    return [{ external, partner }];
  });
  const rest = waiting.filter((external) => !same.some((pair) => pair.external === external));
  const others = [...free.values()].flatMap((partner, index) => {
    const external = rest[index];
    return external === undefined ? [] : [{ external, partner }];
  });
  return [...same, ...others]
    .sort((a, b) => a.external.piece.ordinal - b.external.piece.ordinal)
    .map(({ external, partner }) => targetFor(external, partner, fit));
}
