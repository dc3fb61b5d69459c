import type { ThingKind } from '@/lib/schema/change';
import { asMade } from './as-made';
import type { StoreTransaction } from './database';
import { logChange } from './log-change';
import { makePieces } from './make-pieces';
import { nextJobNumber } from './next-job-number';
import { refused, type Refused } from './refused';
import { rowsOf } from './rows-of';
import { sameContent } from './same-content';
import { senseless } from './senseless';
import type { Fields, Row } from './thing-types';
import { transact } from './transact';
import type { Who } from './who';

export type Made<Kind extends ThingKind> = { state: 'made' | 'known'; row: Row<Kind> } | Refused;

/** What a new thing is made of: `said` in the request, `own` worked out from it by the server. */
export type Fresh = {
  said: Fields & { id: string };
  own?: Fields;
  bytes?: Uint8Array<ArrayBuffer>;
};

/** Keeps a new thing and its line in the change log in one transaction; see makeThing. */
export function keepNew<Kind extends ThingKind>(
  kind: Kind,
  { said, own = {}, bytes }: Fresh,
  who: Who,
): Promise<Made<Kind>> {
  return transact(async (transaction) => {
    const rows = rowsOf(transaction, kind);
    const known = await rows.one(said.id);
    if (known !== undefined) {
      const before = await asMade(transaction, kind, known);
      const isSame =
        sameContent({ ...said, ...own }, before) &&
        (bytes === undefined || (await hasBytes(transaction, said.id, bytes)));
      return isSame ? { state: 'known', row: known } : refused('other-content', 'id');
    }
    const fault = await senseless(transaction, kind, said);
    if (fault !== undefined) return fault;
    const at = new Date().toISOString();
    const kept = { version: 1, createdAt: at, struckAt: null };
    const numbered = kind === 'job' ? { number: await nextJobNumber(transaction) } : {};
    await rows.add([{ ...said, ...own, ...kept, ...numbered, ...(bytes && { bytes }) } as never]);
    const row = (await rows.one(said.id))!;
    await logChange(transaction, who, at, [{ kind, act: 'made', before: null, after: row }]);
    if (kind === 'part') await makePieces(transaction, row as Row<'part'>, who, at);
    return { state: 'made', row };
  });
}

async function hasBytes(transaction: StoreTransaction, id: string, bytes: Uint8Array) {
  const kept = await transaction.picture.findUnique({ where: { id }, select: { bytes: true } });
  return kept !== null && Buffer.compare(kept.bytes, bytes) === 0;
}
