import type { Cut } from '@/lib/schema/fit';

/**
 * The number in the book up to which readings were taken before each cut of one feature of one piece; never
 * falling. The cuts stand in the order of their ordinals; one that names no reading follows all before it.
 */
export function cutPlaces(
  cuts: readonly Pick<Cut, 'lastReadingId'>[],
  seqOf: (readingId: string) => number | undefined,
): number[] {
  let reached = 0;
  return cuts.map(({ lastReadingId }) => {
    const seq = lastReadingId === null ? undefined : seqOf(lastReadingId);
    reached = Math.max(reached, seq ?? 0);
    return reached;
  });
}
