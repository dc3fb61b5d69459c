import type { z } from 'zod';
import type { Batch, Outcome } from '@/lib/schema/reading';
import { asMade } from './as-made';
import type { StoreTransaction } from './database';
import { keepEach, refusedEntry } from './keep-each';
import { logChange } from './log-change';
import type { RefusalCode } from './refused';
import { rowsOf } from './rows-of';
import { sameContent } from './same-content';
import { senseless } from './senseless';
import type { Fields, New } from './thing-types';
import { transact } from './transact';

type NotedKind = 'cut' | 'runEvent';
type Noted = Fields & { id: string; deviceSeq: number; personId: string | null };

/** One kind of thing that a device notes at the machine and sends as it sends readings. */
export type NotedThing<Kind extends NotedKind, Sent extends Noted> = {
  kind: Kind;
  /** Before the code of a refusal. */
  name: string;
  schema: z.ZodType<Sent>;
  /** What it stands on: its job and what the server adds; or the field that names nothing. */
  complete: (
    transaction: StoreTransaction,
    sent: Sent,
  ) => Promise<New<Kind> | { code: RefusalCode; at: string }>;
};

/**
 * Keeps things a device has noted, each judged on its own and in a transaction of its own, and says of each,
 * in the order sent, what became of it: as keepEntries does for readings.
 *
 * Safe to repeat: an id that is in the book with the same content is `known`.
 */
export async function keepNoted<Kind extends NotedKind, Sent extends Noted>(
  thing: NotedThing<Kind, Sent>,
  { deviceId, entries }: z.infer<typeof Batch>,
): Promise<Outcome[]> {
  const refuse = (id: string, code: RefusalCode, at: string, says?: string) =>
    refusedEntry(thing.name, id, code, at, says);

  const keep = (sent: Sent): Promise<Outcome> =>
    transact(async (transaction): Promise<Outcome> => {
      const { kind } = thing;
      const { id, deviceSeq, personId } = sent;
      const rows = rowsOf<NotedKind>(transaction, kind);
      const known = await rows.one(id);
      if (known !== undefined) {
        const before = await asMade(transaction, kind, known);
        if (!sameContent({ ...sent, deviceId }, before)) return refuse(id, 'other-content', 'id');
        return { ...(await placeOf(transaction, kind, known)), state: 'known' };
      }
      if ((await rows.where({ deviceId, deviceSeq })).length > 0) {
        return refuse(id, 'device-seq-taken', 'deviceSeq');
      }
      const said = await thing.complete(transaction, sent);
      if ('code' in said) return refuse(id, said.code, said.at);
      if (personId !== null && !(await rowsOf(transaction, 'person').one(personId))) {
        return refuse(id, 'no-such-person', 'personId');
      }
      const fault = await senseless(transaction, kind, said);
      if (fault !== undefined) return refuse(id, fault.code, fault.at, fault.says);
      const at = new Date().toISOString();
      await rows.add([{ ...said, deviceId, version: 1, createdAt: at, struckAt: null }]);
      const row = (await rows.one(id))!;
      await logChange(transaction, { deviceId, personId }, at, [
        { kind, act: 'made', before: null, after: row },
      ]);
      return { ...(await placeOf(transaction, kind, row)), state: 'kept' };
    });

  return keepEach(thing.name, thing.schema, entries, keep);
}

/** Its number in the book is that of the line of the change log that made it. */
async function placeOf(
  transaction: StoreTransaction,
  kind: NotedKind,
  { id, jobId, createdAt }: { id: string; jobId: string; createdAt: string },
): Promise<{ id: string; seq: number; receivedAt: string }> {
  const line = await transaction.changeLog.findFirst({
    where: { jobId, thing: kind, thingId: id, act: 'made' },
    orderBy: { seq: 'desc' },
    select: { seq: true },
  });
  return { id, seq: Number(line?.seq ?? 0), receivedAt: createdAt };
}
