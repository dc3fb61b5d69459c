import { z } from 'zod';

/** A text that was typed at the Bench and is no reading yet. */
export const Unplaced = z.strictObject({
  id: z.string(),
  text: z.string().max(64),
  /** What was on the bench. */
  pieceId: z.string(),
  featureId: z.string(),
  /** What is missing: the gauge it is of, or the answer to a question that was typed over. */
  lacks: z.enum(['gauge', 'answer']),
});
export type Unplaced = z.infer<typeof Unplaced>;

/** What a device remembers, read back; what it cannot read is nothing. */
export function unplacedOf(word: string | null): readonly Unplaced[] {
  if (word === null) return none;
  try {
    return z.array(Unplaced).parse(JSON.parse(word));
  } catch {
    return none;
  }
}

/** The oldest text that only waits for the gauge of this feature to be named. */
export function dueOf(
  list: readonly Unplaced[],
  at: { pieceId: string; featureId: string },
): Unplaced | null {
  const isDue = (one: Unplaced) =>
    one.lacks === 'gauge' && one.pieceId === at.pieceId && one.featureId === at.featureId;
  return list.find(isDue) ?? null;
}

const none: readonly Unplaced[] = [];
