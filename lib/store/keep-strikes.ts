import type { z } from 'zod';
import { NewStrike } from '@/lib/schema/new-strike';
import type { Batch, Outcome } from '@/lib/schema/reading';
import { keepEach, refusedEntry } from './keep-each';
import { logChange } from './log-change';
import type { RefusalCode } from './refused';
import { rowsOf } from './rows-of';
import { sameContent } from './same-content';
import { senseless } from './senseless';
import { transact } from './transact';

const name = 'strike';

/**
 * Strikes out, or puts back, cuts and events of runs as a device has noted it, each judged on its own and in a
 * transaction of its own, and says of each, in the order sent, what became of it.
 *
 * Safe to repeat: an id that is in the book with the same content is `known`, and does nothing again, whatever
 * was done to the thing since. Where the thing stood so already it is kept, and nothing changes.
 */
export function keepStrikes({ deviceId, entries }: z.infer<typeof Batch>): Promise<Outcome[]> {
  return keepEach(name, NewStrike, entries, (sent) => keep(sent, deviceId));
}

function keep(sent: NewStrike, deviceId: string): Promise<Outcome> {
  const { id, deviceSeq, personId, thing, thingId, struck } = sent;
  const refuse = (code: RefusalCode, at: string) => refusedEntry(name, id, code, at);
  return transact(async (transaction): Promise<Outcome> => {
    const known = await transaction.strike.findUnique({ where: { id } });
    if (known !== null) {
      if (!sameContent({ ...sent, deviceId }, known)) return refuse('other-content', 'id');
      return { id, state: 'known', seq: Number(known.lineSeq), receivedAt: known.receivedAt };
    }
    if ((await transaction.strike.findFirst({ where: { deviceId, deviceSeq } })) !== null) {
      return refuse('device-seq-taken', 'deviceSeq');
    }
    const rows = rowsOf<'cut' | 'runEvent'>(transaction, thing);
    const before = await rows.one(thingId);
    if (before === undefined) {
      return refuse(thing === 'cut' ? 'no-such-cut' : 'no-such-event', 'thingId');
    }
    if (personId !== null && !(await rowsOf(transaction, 'person').one(personId))) {
      return refuse('no-such-person', 'personId');
    }
    const receivedAt = new Date().toISOString();
    if ((before.struckAt !== null) !== struck) {
      const fault = struck ? undefined : await senseless(transaction, thing, before);
      if (fault !== undefined) return refusedEntry(name, id, fault.code, 'thingId', fault.says);
      const struckAt = struck ? receivedAt : null;
      const isChanged = await rows.change(thingId, before.version, { struckAt });
      if (!isChanged) throw new Error(`${thing} ${thingId} changed while it was being struck out`);
      const after = (await rows.one(thingId))!;
      const act = struck ? 'struck' : 'put back';
      await logChange(transaction, { deviceId, personId }, receivedAt, [
        { kind: thing, act, before, after },
      ]);
    }
    const { jobId } = before;
    const line = await transaction.changeLog.findFirst({
      where: { jobId, thing, thingId },
      orderBy: { seq: 'desc' },
      select: { seq: true },
    });
    const lineSeq = line?.seq ?? 0n;
    await transaction.strike.create({ data: { ...sent, jobId, deviceId, receivedAt, lineSeq } });
    return { id, state: 'kept', seq: Number(lineSeq), receivedAt };
  });
}
