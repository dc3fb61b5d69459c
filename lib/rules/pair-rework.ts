import { leastRework } from '@/lib/maths/assignment/least-rework';
import { forbiddenPairs } from './choose-pairs';
import type { FitPiece, FitView } from './fit-view';

/** One thing to do so that two pieces suit each other. Lengths in pm, on diameter. */
export type PairWork = {
  internalPieceId: string;
  externalPieceId: string;
  /** Metal comes off one of them, or one is made anew. */
  work: 'cut external' | 'cut internal' | 'remake external' | 'remake internal';
  toPm: number;
  /** Metal to take off; null for a new piece. */
  takeOffPm: number | null;
};

/** A pairing that is not complete: how far it goes, and the least work that would complete it. */
export type Shortage = {
  /** Pairs that can be put together of the measured pieces, and how many could be at best. */
  most: number;
  of: number;
  /** Null where the pairs kept apart leave no complete pairing whatever the sizes. */
  works: PairWork[] | null;
};

/** The free measured pieces that a pairing is made of. */
export function freePieces(fit: FitView): { internals: FitPiece[]; externals: FitPiece[] } {
  const decided = new Set([
    ...fit.lockedToMake,
    // A bore is to be made to it: nothing else is.
    ...fit.toBore.flatMap(({ pieceId, partnerId }) => [pieceId, partnerId]),
    ...fit.pairs
      .filter(({ state }) => state !== 'chosen')
      .flatMap((pair) => [pair.internalPieceId, pair.externalPieceId]),
  ]);
  const free = (list: readonly FitPiece[]) =>
    list.filter(
      ({ piece, size, stillToCut, leftOut }) =>
        size !== null && !stillToCut && !leftOut && !decided.has(piece.id),
    );
  return { internals: free(fit.internals), externals: free(fit.externals) };
}

/** Pairs chosen of the free pieces, and how many there could be at best: one for each of the shorter side. */
export function pairsShort(fit: FitView): { most: number; of: number } {
  const { internals, externals } = freePieces(fit);
  const most = fit.pairs.filter(({ state }) => state === 'chosen').length;
  return { most, of: Math.min(internals.length, externals.length) };
}

/**
 * What stands in the way of a complete pairing of the measured pieces, or null where nothing does.
 *
 * Metal only ever comes off: a shaft gets smaller, a bore larger. `cut` says which side is worked on where
 * either could be; the other side is left as it is. Pieces still to cut have targets of their own and take no
 * part. Cost: O(n^3), see leastRework; a tenth of a second for 200 pieces.
 */
export function pairRework(fit: FitView, cut: 'internal' | 'external'): Shortage | null {
  const short = pairsShort(fit);
  if (short.most >= short.of) return null;
  const { internals, externals } = freePieces(fit);
  const found = leastRework({
    boresPm: internals.map(({ size }) => size!.valuePm),
    shaftsPm: externals.map(({ size }) => size!.valuePm),
    minPm: fit.fit.minPm,
    maxPm: fit.fit.maxPm,
    aimPm: fit.fit.aimPm,
    forbidden: forbiddenPairs(internals, externals, fit.leftOut),
    uncuttable:
      cut === 'internal' ? { shafts: [...externals.keys()] } : { bores: [...internals.keys()] },
    remake: cut === 'internal' ? 'bore' : 'shaft',
  });
  if (found === undefined) return { ...short, works: null };
  const works = found.pairs.flatMap((pair): PairWork[] => {
    if (pair.work === 'none') return [];
    const [act, what] = pair.work.split('-') as ['cut' | 'remake', 'shaft' | 'bore'];
    return [
      {
        internalPieceId: internals[pair.bore]!.piece.id,
        externalPieceId: externals[pair.shaft]!.piece.id,
        work: `${act} ${what === 'shaft' ? 'external' : 'internal'}`,
        toPm: pair.toPm,
        takeOffPm: 'takeOffPm' in pair ? pair.takeOffPm : null,
      },
    ];
  });
  return { ...short, works };
}
