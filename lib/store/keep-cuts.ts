import type { z } from 'zod';
import { NewCut } from '@/lib/schema/new-cut';
import type { Batch, Outcome } from '@/lib/schema/reading';
import { strayCharacter } from '@/lib/schema/stray-character';
import { asMade } from './as-made';
import type { StoreTransaction } from './database';
import { logChange } from './log-change';
import { refusals, type RefusalCode } from './refused';
import { rowsOf } from './rows-of';
import { sameContent } from './same-content';
import { senseless } from './senseless';
import { transact } from './transact';

/**
 * Keeps cuts a device has noted, each judged on its own and in a transaction of its own, and says of each,
 * in the order sent, what became of it: as keepEntries does for readings.
 *
 * Safe to repeat: an id that is in the book with the same content is `known`. The place in the order of cuts
 * of its piece and feature is the next free one, so that cuts of two devices never want the same.
 */
export async function keepCuts({ deviceId, entries }: z.infer<typeof Batch>): Promise<Outcome[]> {
  const outcomes: Outcome[] = [];
  for (const given of entries) {
    const judged = judge(given);
    outcomes.push('state' in judged ? judged : await keep(deviceId, judged.cut));
  }
  return outcomes;
}

function judge(given: unknown): { cut: NewCut } | Outcome {
  const id = (given as { id?: unknown } | null)?.id;
  const name = typeof id === 'string' ? id.slice(0, 64) : '';
  const parsed = NewCut.safeParse(given);
  if (!parsed.success) {
    const issue = parsed.error.issues[0]!;
    return refuse(name, 'wrong-shape', issue.path.join('.'), issue.message);
  }
  const stray = strayCharacter(parsed.data);
  if (stray === undefined) return { cut: parsed.data };
  return refuse(name, 'wrong-shape', stray, 'It contains a character that cannot be kept');
}

function keep(deviceId: string, cut: NewCut): Promise<Outcome> {
  return transact(async (transaction): Promise<Outcome> => {
    const rows = rowsOf(transaction, 'cut');
    const known = await rows.one(cut.id);
    if (known !== undefined) {
      const before = await asMade(transaction, 'cut', known);
      if (!sameContent({ ...cut, deviceId }, before)) return refuse(cut.id, 'other-content', 'id');
      return { ...(await placeOf(transaction, known)), state: 'known' };
    }
    const { deviceSeq, pieceId, featureId, personId } = cut;
    if ((await rows.where({ deviceId, deviceSeq })).length > 0) {
      return refuse(cut.id, 'device-seq-taken', 'deviceSeq');
    }
    const piece = await rowsOf(transaction, 'piece').one(pieceId);
    if (piece === undefined) return refuse(cut.id, 'no-such-piece', 'pieceId');
    if (personId !== null && !(await rowsOf(transaction, 'person').one(personId))) {
      return refuse(cut.id, 'no-such-person', 'personId');
    }
    const earlier = await rows.where({ pieceId, featureId });
    const ordinal = Math.max(0, ...earlier.map((other) => other.ordinal)) + 1;
    const said = { ...cut, jobId: piece.jobId, ordinal, afterPm: null };
    const fault = await senseless(transaction, 'cut', said);
    if (fault !== undefined) return refuse(cut.id, fault.code, fault.at, fault.says);
    const at = new Date().toISOString();
    await rows.add([{ ...said, deviceId, version: 1, createdAt: at, struckAt: null }]);
    const row = (await rows.one(cut.id))!;
    await logChange(transaction, { deviceId, personId }, at, [
      { kind: 'cut', act: 'made', before: null, after: row },
    ]);
    return { ...(await placeOf(transaction, row)), state: 'kept' };
  });
}

/** Its number in the book is that of the line of the change log that made it. */
async function placeOf(
  transaction: StoreTransaction,
  { id, jobId, createdAt }: { id: string; jobId: string; createdAt: string },
): Promise<{ id: string; seq: number; receivedAt: string }> {
  const line = await transaction.changeLog.findFirst({
    where: { jobId, thing: 'cut', thingId: id, act: 'made' },
    orderBy: { seq: 'desc' },
    select: { seq: true },
  });
  return { id, seq: Number(line?.seq ?? 0), receivedAt: createdAt };
}

function refuse(id: string, code: RefusalCode, at: string, says: string = refusals[code]): Outcome {
  return { id, state: 'refused', code: `cut/${code}`, at, says };
}
