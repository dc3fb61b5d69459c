import type { Pair } from '@/lib/schema/fit';

/**
 * The row that a new decision on two pieces of a fit is written on, or undefined where it needs one of its
 * own: what was decided last and still holds, else one that was undone and never was final. A final pair that
 * was undone keeps its row to itself, with the reason, so that the act stays to be read.
 */
export function pairRow(
  pairs: readonly Pair[],
  fitId: string,
  internalPieceId: string,
  externalPieceId: string,
): Pair | undefined {
  const ours = pairs.filter(
    (pair) =>
      pair.struckAt === null &&
      pair.fitId === fitId &&
      pair.internalPieceId === internalPieceId &&
      pair.externalPieceId === externalPieceId &&
      !isRecord(pair),
  );
  return ours.find(({ state }) => state !== 'undone') ?? ours[0];
}

/** A final pair that was undone: from then on a record of both acts. */
export function isRecord({ state, looks, clearancePm }: Pair): boolean {
  return state === 'undone' && ((looks?.length ?? 0) > 0 || clearancePm !== null);
}
