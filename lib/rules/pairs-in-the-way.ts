import type { Pair } from '@/lib/schema/fit';

/** What stands against keeping two pieces of a fit together: a piece belongs to one pair at a time. */
export type InTheWay = {
  /** A final pair of one of them with another piece: it is undone by a person, with a reason, or it stays. */
  final: Pair | null;
  /** Pairs one of them is only locked to: they are let go first. */
  locked: Pair[];
};

/** The decided pairs of either piece with another one, in one fit. */
export function pairsInTheWay(
  pairs: readonly Pair[],
  fitId: string,
  internalPieceId: string,
  externalPieceId: string,
): InTheWay {
  const others = pairs.filter(
    (pair) =>
      pair.struckAt === null &&
      pair.fitId === fitId &&
      (pair.internalPieceId === internalPieceId) !== (pair.externalPieceId === externalPieceId),
  );
  return {
    final: others.find(({ state }) => state === 'final') ?? null,
    locked: others.filter(({ state }) => state === 'locked'),
  };
}
