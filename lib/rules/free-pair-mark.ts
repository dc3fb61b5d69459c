import type { FitView } from './fit-view';

/**
 * A pair mark that no other final pair of the fit carries: the number of the internal piece, or else the next
 * one that is free.
 */
export function freePairMark(
  { pairs, every }: Pick<FitView, 'pairs' | 'every'>,
  { internalPieceId }: { internalPieceId: string },
): string {
  const taken = new Set(
    pairs.flatMap(({ pair, state, ...own }) =>
      state === 'final' && own.internalPieceId !== internalPieceId ? [pair?.mark ?? ''] : [],
    ),
  );
  let number = every.get(internalPieceId)?.piece.ordinal ?? 1;
  while (taken.has(String(number))) number += 1;
  return String(number);
}
