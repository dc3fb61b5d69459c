/** A text that was typed at the Bench and is no reading yet. */
export type Unplaced = {
  id: string;
  text: string;
  /** What was on the bench. */
  pieceId: string;
  featureId: string;
  /** What is missing: the gauge it is of, or the answer to a question that was typed over. */
  lacks: 'gauge' | 'answer';
};

/** What a device remembers, read back; what it cannot read is nothing. No zod here: the Bench reads it. */
export function unplacedOf(word: string | null): readonly Unplaced[] {
  if (word === null) return none;
  try {
    const list: unknown = JSON.parse(word);
    return Array.isArray(list) && list.every(isUnplaced) ? list : none;
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

function isUnplaced(one: unknown): one is Unplaced {
  if (typeof one !== 'object' || one === null) return false;
  const { lacks, ...rest } = one as Record<string, unknown>;
  return (
    (lacks === 'gauge' || lacks === 'answer') &&
    Object.keys(rest).length === texts.length &&
    texts.every((name) => typeof rest[name] === 'string') &&
    (rest['text'] as string).length <= textMost
  );
}

const texts = ['id', 'text', 'pieceId', 'featureId'] as const;
/** As the schema of a reading takes it. */
const textMost = 64;

const none: readonly Unplaced[] = [];
