import { pairClearance } from '@/lib/maths/fit/pair-clearance';
import type { Fit, Pair } from '@/lib/schema/fit';
import type { Feature } from '@/lib/schema/feature';
import type { Gauge } from '@/lib/schema/gauge';
import type { Piece } from '@/lib/schema/part';
import { boreTargets } from './bore-targets';
import { cellKey, type Cells } from './cells';
import { choosePairs } from './choose-pairs';
import { clearanceDoubt } from './clearance-doubt';
import { governingSize, type GoverningSize } from './governing-size';
import { pairFlag, type PairFlag } from './pair-flag';
import { pairNow } from './pair-now';
import { pieceFate } from './piece-fate';
import { targetFor, type Target } from './target';
import { guardFactor, verdictOf, type Verdict } from './verdict';

/** One piece on its side of a fit. */
export type FitPiece = {
  piece: Piece;
  /** The size that decides the fit; null while it is not known. */
  size: GoverningSize | null;
  /** Metal is still to come off before it suits any partner; it takes no part in the pairing. */
  stillToCut: boolean;
  /** By the drawing's own limits there is metal to come off. */
  toDrawing: boolean;
  /** A person has left it out: it is measured and made, but nothing is paired with it. */
  leftOut: boolean;
};

/** The clearance of one internal with one external piece, pm; negative is interference. */
export type Clearance = {
  internalPieceId: string;
  externalPieceId: string;
  clearancePm: number;
  standardPm: number;
  /** Expanded uncertainty at 95.45 %, pm: the plus-and-minus that is shown. */
  expandedPm: number;
  verdict: Verdict;
  /** Probability that the true clearance is inside the fit; null where there is no size to say it by. */
  chance: number | null;
};

export type ChosenPair = Clearance & {
  /** `final` and `locked` were decided by a person, `chosen` by the pairing. */
  state: 'final' | 'locked' | 'chosen';
  pair: Pair | null;
  /** A final pair whose clearance has since moved away from what was recorded. */
  changedSince: boolean;
  /** What has changed since a person last looked at a final pair; null while nothing has. */
  flag: PairFlag | null;
};

export type FitView = {
  fit: Fit;
  internalFeature: Feature;
  externalFeature: Feature;
  internals: FitPiece[];
  externals: FitPiece[];
  /** Every piece of both features by its id, also one that takes no part any more but stands in a pair. */
  every: ReadonlyMap<string, FitPiece>;
  /** Decided and chosen pairs, in the order of the internal pieces. */
  pairs: ChosenPair[];
  /** External pieces still to make, each to its partner's measured size. */
  toMake: Target[];
  /** Internal pieces still to make to an external one that is made already. */
  toBore: Target[];
  /** Pieces a person has locked to a partner before both were made. */
  lockedToMake: ReadonlySet<string>;
  /** Pairs a person keeps apart, by `cellKey` of internal and external piece. */
  leftOut: ReadonlySet<string>;
  /** Measured pieces that suit no free partner. */
  withoutPartner: string[];
};

/**
 * One fit of a job as it stands: sizes, the pairing that is best for the fit's purpose, and what is still to
 * make.
 *
 * Pairs a person has made final or locked stand, a final one though a piece of it was struck out; pairs and
 * pieces left out are never chosen. An external piece
 * that is larger (an internal that is smaller) than any free partner allows is still to cut. Partners
 * for pieces to make are the free measured ones: the one of the same number first, then in order. A pair
 * locked before both its pieces are made says what the second is made to. Scrapped pieces, and those that
 * wait for a sleeve, take no part.
 */
export function fitView(
  fit: Fit,
  features: ReadonlyMap<string, Feature>,
  pieces: readonly Piece[],
  pairs: readonly Pair[],
  cells: Cells,
  gauges: readonly Gauge[],
): FitView | null {
  const internalFeature = features.get(fit.internalFeatureId);
  const externalFeature = features.get(fit.externalFeatureId);
  if (internalFeature === undefined || externalFeature === undefined) return null;

  const out = new Set(fit.leftOutPieceIds);
  const side = (feature: Feature, which: 'internal' | 'external'): FitPiece[] =>
    pieces
      .filter((piece) => piece.partId === feature.partId)
      .sort((a, b) => a.ordinal - b.ordinal)
      .map((piece) => {
        const cell = cells.byKey.get(cellKey(piece.id, feature.id));
        const size = governingSize(cell, which, fit.governs, cells.gauges, cells.history);
        const toDrawing = cell?.verdict?.state === 'to cut';
        return { piece, size, stillToCut: false, toDrawing, leftOut: out.has(piece.id) };
      });
  const [everyInternal, everyExternal] = [
    side(internalFeature, 'internal'),
    side(externalFeature, 'external'),
  ];
  const standing = ({ piece }: FitPiece) => takesPart(piece);
  const internals = everyInternal.filter(standing);
  const externals = everyExternal.filter(standing);

  const ours = pairs.filter((pair) => pair.fitId === fit.id && pair.struckAt === null);
  const open = openPairs(ours, internals, externals, fit);
  const every = new Map(
    [...everyInternal, ...everyExternal].map((entry) => [entry.piece.id, entry]),
  );
  const decided = decidedPairs(ours, every, fit, cells, gauges).filter(
    ({ pair }) => !open.toMake.includes(pair!) && !open.toBore.includes(pair!),
  );
  const taken = new Set(
    [...decided, ...open.toMake, ...open.toBore].flatMap((p) => [
      p.internalPieceId,
      p.externalPieceId,
    ]),
  );
  const apart = new Set(
    ours
      .filter((pair) => pair.state === 'left out')
      .map((pair) => cellKey(pair.internalPieceId, pair.externalPieceId)),
  );
  markStillToCut(internals, externals, { taken, apart }, fit);
  const free = (list: FitPiece[]) =>
    list.filter(
      ({ piece, size, stillToCut, leftOut }) =>
        size !== null && !stillToCut && !leftOut && !taken.has(piece.id),
    );

  const chosen = choosePairs(free(internals), free(externals), fit, apart);
  for (const pair of chosen) taken.add(pair.internalPieceId).add(pair.externalPieceId);

  const order = new Map(everyInternal.map(({ piece }, index) => [piece.id, index]));
  const all = [...decided, ...chosen].sort(
    (a, b) => order.get(a.internalPieceId)! - order.get(b.internalPieceId)!,
  );
  const toMake = targets(internals, externals, { taken, apart }, fit, open.toMake);
  const promised = new Set(toMake.flatMap((t) => [t.pieceId, t.partnerId]));
  const toBore = boreTargets(
    { internals, externals, taken: new Set([...taken, ...promised]), leftOut: apart },
    open.toBore,
    fit,
  );
  for (const { pieceId, partnerId, nowPm } of toBore) {
    promised.add(pieceId).add(partnerId);
    const bore = internals.find(({ piece }) => piece.id === pieceId)!;
    bore.stillToCut = nowPm !== null;
  }
  const withoutPartner = [...free(internals), ...free(externals)]
    .map(({ piece }) => piece.id)
    .filter((id) => !taken.has(id) && !promised.has(id));
  return {
    fit,
    internalFeature,
    externalFeature,
    internals,
    externals,
    every,
    pairs: all,
    toMake,
    toBore,
    lockedToMake: new Set(
      [...open.toMake, ...open.toBore].flatMap((p) => [p.internalPieceId, p.externalPieceId]),
    ),
    leftOut: apart,
    withoutPartner,
  };
}

/** The clearance of two measured pieces, judged by the fit's limits and both uncertainties. */
export function clearanceOf(internal: FitPiece, external: FitPiece, fit: Fit): Clearance | null {
  if (internal.size === null || external.size === null) return null;
  const { clearancePm, uPm, probabilityInside } = pairClearance({
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
    expandedPm: clearanceDoubt(internal.size, external.size),
    // A clearance is nobody's metal: too wide and too tight are both out.
    verdict: verdictOf(size, { lowerPm: fit.minPm, upperPm: fit.maxPm }, 'position')!,
    chance: probabilityInside,
  };
}

/** A piece that is struck out, scrapped, or waits for its sleeve, is nobody's partner. */
function takesPart(piece: Piece): boolean {
  return pieceFate(piece) === null;
}

/** A bore that is measured and, by its own drawing, has no metal left in it: shafts can be made to it. */
function isPartner({ size, toDrawing, leftOut }: FitPiece): boolean {
  return size !== null && !toDrawing && !leftOut;
}

/**
 * Locked pairs of which one piece is still to make: the shaft, where the bore is measured; else the bore.
 * Where both are measured and there is metal between them, it is the side the drawing says is to cut.
 */
function openPairs(
  ours: readonly Pair[],
  internals: readonly FitPiece[],
  externals: readonly FitPiece[],
  fit: Fit,
): { toMake: Pair[]; toBore: Pair[] } {
  const open: { toMake: Pair[]; toBore: Pair[] } = { toMake: [], toBore: [] };
  for (const pair of ours) {
    if (pair.state !== 'locked') continue;
    const internal = internals.find(({ piece }) => piece.id === pair.internalPieceId);
    const external = externals.find(({ piece }) => piece.id === pair.externalPieceId);
    if (internal === undefined || external === undefined) continue;
    if (internal.size === null && external.size === null) continue;
    if (internal.size === null) open.toBore.push(pair);
    else if (external.size === null) open.toMake.push(pair);
    else {
      const clearancePm = internal.size.valuePm - external.size.valuePm;
      const u = Math.hypot(internal.size.standardPm, external.size.standardPm);
      if (clearancePm >= fit.minPm - guardFactor * u) continue;
      (internal.toDrawing ? open.toBore : open.toMake).push(pair);
    }
  }
  return open;
}

function decidedPairs(
  ours: readonly Pair[],
  every: ReadonlyMap<string, FitPiece>,
  fit: Fit,
  cells: Cells,
  gauges: readonly Gauge[],
): ChosenPair[] {
  const nowOf = pairNow(fit, cells, gauges);
  return ours.flatMap((pair): ChosenPair[] => {
    if (pair.state !== 'final' && pair.state !== 'locked') return [];
    const internal = every.get(pair.internalPieceId);
    const external = every.get(pair.externalPieceId);
    if (internal === undefined || external === undefined) return [];
    const now = clearanceOf(internal, external, fit);
    const struck = !takesPart(internal.piece) || !takesPart(external.piece);
    if (pair.state === 'locked' && (now === null || struck)) return [];
    const recordedPm = pair.clearancePm ?? 0;
    const clearance: Clearance = now ?? {
      internalPieceId: internal.piece.id,
      externalPieceId: external.piece.id,
      clearancePm: recordedPm,
      standardPm: (pair.uncertaintyPm ?? 0) / 2,
      expandedPm: pair.uncertaintyPm ?? 0,
      verdict: { state: 'unsure', side: null, beyondPm: 0, limitPm: null },
      chance: null,
    };
    const flag =
      pair.state === 'final' ? pairFlag(pair, fit, nowOf(now, internal, external)) : null;
    return [{ ...clearance, state: pair.state, pair, changedSince: flag !== null, flag }];
  });
}

/** What a person has decided of the pieces of a fit already. */
type Settled = {
  /** Pieces that have a partner. */
  taken: ReadonlySet<string>;
  /** Pairs kept apart, by `cellKey`. */
  apart: ReadonlySet<string>;
};

function markStillToCut(
  internals: FitPiece[],
  externals: FitPiece[],
  { taken, apart }: Settled,
  fit: Fit,
): void {
  const bores = internals
    .filter((bore) => isPartner(bore) && !taken.has(bore.piece.id))
    .sort((a, b) => b.size!.valuePm - a.size!.valuePm);
  for (const external of externals) {
    if (external.size === null || external.leftOut || taken.has(external.piece.id)) continue;
    const largest = bores.find((bore) => !apart.has(cellKey(bore.piece.id, external.piece.id)));
    if (largest === undefined) continue;
    const clearancePm = largest.size!.valuePm - external.size.valuePm;
    external.stillToCut = clearancePm < fit.minPm - guardFactor * external.size.standardPm;
  }
}

function targets(
  internals: readonly FitPiece[],
  externals: readonly FitPiece[],
  { taken, apart }: Settled,
  fit: Fit,
  locked: readonly Pair[],
): Target[] {
  const decided = locked.map((pair) => ({
    external: externals.find(({ piece }) => piece.id === pair.externalPieceId)!,
    partner: internals.find(({ piece }) => piece.id === pair.internalPieceId)!,
  }));
  for (const { external } of decided) external.stillToCut = external.size !== null;
  const isFree = ({ piece, leftOut }: FitPiece) => !leftOut && !taken.has(piece.id);
  const partners = internals.filter((bore) => isPartner(bore) && isFree(bore));
  const waiting = externals.filter((one) => (one.size === null || one.stillToCut) && isFree(one));
  const made = [...decided, ...shareOut(waiting, partners, apart)];
  return made
    .sort((a, b) => a.external.piece.ordinal - b.external.piece.ordinal)
    .map(({ external, partner }) => targetFor(external, partner, fit));
}

type Promised = { external: FitPiece; partner: FitPiece };

/**
 * A partner for each piece that waits, never one it is kept apart from: that of its own number, then in order. A
 * piece left over takes the partner of another one that can have a free one instead.
 */
function shareOut(
  waiting: readonly FitPiece[],
  partners: readonly FitPiece[],
  apart: ReadonlySet<string>,
): Promised[] {
  const may = (external: FitPiece, partner: FitPiece) =>
    !apart.has(cellKey(partner.piece.id, external.piece.id));
  const free = new Set(partners);
  const byNumber = new Map(partners.map((partner) => [partner.piece.ordinal, partner]));
  const made = new Map<FitPiece, FitPiece>();
  const give = (external: FitPiece, partner: FitPiece) => {
    free.delete(partner);
    made.set(external, partner);
  };
  for (const external of waiting) {
    const same = byNumber.get(external.piece.ordinal);
    if (same !== undefined && may(external, same)) give(external, same);
  }
  for (const external of waiting) {
    if (made.has(external)) continue;
    const first = firstOf(free, (partner) => may(external, partner));
    if (first !== undefined) give(external, first);
  }
  for (const external of waiting) {
    if (free.size === 0) break;
    if (!made.has(external)) swap(external);
  }
  return [...made].map(([external, partner]) => ({ external, partner }));

  function swap(external: FitPiece): void {
    for (const [other, partner] of made) {
      const instead = may(external, partner) ? firstOf(free, (one) => may(other, one)) : undefined;
      if (instead === undefined) continue;
      give(other, instead);
      return give(external, partner);
    }
  }
}

function firstOf<Thing>(things: Iterable<Thing>, is: (thing: Thing) => boolean): Thing | undefined {
  for (const thing of things) if (is(thing)) return thing;
  return undefined;
}
