import type { StoreTransaction } from './database';
import { logChange } from './log-change';
import { rowsOf } from './rows-of';
import type { Row } from './thing-types';
import { uuidv7 } from './uuid';
import type { Who } from './who';

/**
 * Makes the pieces a part still lacks, so that as many count as its quantity says: prefix and number,
 * going on from the last. A piece that was struck out is not counted, and its mark is not used again.
 *
 * @returns how many pieces more than the quantity says there are: none is struck out for that
 */
export async function makePieces(
  transaction: StoreTransaction,
  part: Row<'part'>,
  who: Who,
  at: string,
): Promise<number> {
  const rows = rowsOf(transaction, 'piece');
  const there = await rows.where({ partId: part.id });
  const marks = new Set(there.map(({ mark }) => mark));
  const lacking = part.quantity - there.filter(({ struckAt }) => struckAt === null).length;
  const fresh: Row<'piece'>[] = [];
  let ordinal = Math.max(0, ...there.map((piece) => piece.ordinal));
  while (fresh.length < lacking) {
    const mark = `${part.prefix}${++ordinal}`;
    if (!marks.has(mark)) fresh.push(pieceOf(part, ordinal, mark, at));
  }
  await rows.add(fresh);
  const lines = fresh.map((after) => ({
    kind: 'piece' as const,
    act: 'made' as const,
    before: null,
    after,
  }));
  await logChange(transaction, who, at, lines);
  return Math.max(0, -lacking);
}

/** A new piece of a part. */
export function pieceOf(
  part: Pick<Row<'part'>, 'id' | 'jobId'>,
  ordinal: number,
  mark: string,
  at: string,
): Row<'piece'> {
  const kept = { id: uuidv7(), version: 1, createdAt: at, struckAt: null };
  return { ...kept, jobId: part.jobId, partId: part.id, ordinal, mark, note: '' };
}
