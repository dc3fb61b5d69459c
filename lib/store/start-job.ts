import type { ThingKind } from '@/lib/schema/change';
import type { JobStart } from '@/lib/schema/new-job';
import type { StoreTransaction } from './database';
import { jobStartFault } from './job-start-fault';
import { logChange } from './log-change';
import { nextJobNumber } from './next-job-number';
import { pieceOf } from './make-pieces';
import { refused, type Refused } from './refused';
import { rowsOf } from './rows-of';
import { sameContent } from './same-content';
import type { Fields } from './thing-types';
import { transact } from './transact';
import type { Who } from './who';

export type Started = { state: 'made' | 'known'; jobId: string } | Refused;

type Lot = { kind: ThingKind; at: string; rows: (Fields & { id: string })[] };

/**
 * Starts a whole job in one transaction: the job with the next running number, its parts, features, fits
 * and runs, and of each part as many pieces as its quantity says.
 *
 * Safe to repeat: a job that is in the book as it was started is `known`, whatever has been changed on it
 * since; an id that is in the book with another content is refused.
 */
export async function startJob(start: JobStart, who: Who): Promise<Started> {
  const fault = jobStartFault(start);
  if (fault !== undefined) return fault;
  const jobId = start.job.id;
  const said = lotsOf(start);
  return transact(async (transaction) => {
    if ((await rowsOf(transaction, 'job').one(jobId)) !== undefined) {
      const isSame = await wasStartedSo(transaction, jobId, said);
      return isSame ? { state: 'known', jobId } : refused('other-content', 'job.id');
    }
    const taken = await takenId(transaction, said);
    if (taken !== undefined) return taken;
    const createdAt = new Date().toISOString();
    const number = await nextJobNumber(transaction);
    const kept = { version: 1, createdAt, struckAt: null };
    const lots = said.map((lot) => ({
      ...lot,
      rows: lot.rows.map((row) => ({ ...row, ...kept })),
    }));
    lots[0] = { ...lots[0]!, rows: [{ ...lots[0]!.rows[0]!, number } as never] };
    lots.splice(2, 0, { kind: 'piece', at: '', rows: piecesOf(start, createdAt) as never });
    for (const { kind, rows } of lots) await rowsOf(transaction, kind).add(rows as never);
    const lines = lots.flatMap(({ kind, rows }) =>
      rows.map((after) => ({ kind, act: 'made' as const, before: null, after })),
    );
    await logChange(transaction, who, createdAt, lines);
    return { state: 'made', jobId };
  });
}

/** Everything the request says, in an order in which each row finds what it names. */
function lotsOf({ job, parts, features, fits, runs }: JobStart): Lot[] {
  const inJob = <Row extends object>(rows: readonly Row[]) =>
    rows.map((row) => ({ ...row, jobId: job.id })) as unknown as Lot['rows'];
  return [
    { kind: 'job', at: 'job', rows: [job] },
    { kind: 'part', at: 'parts', rows: inJob(parts) },
    { kind: 'feature', at: 'features', rows: inJob(features) },
    { kind: 'fit', at: 'fits', rows: inJob(fits) },
    { kind: 'run', at: 'runs', rows: inJob(runs) },
  ];
}

function piecesOf({ job, parts }: JobStart, at: string) {
  return parts.flatMap((part) =>
    Array.from({ length: part.quantity }, (_, i) =>
      pieceOf({ ...part, jobId: job.id }, i + 1, `${part.prefix}${i + 1}`, at),
    ),
  );
}

/** Whether everything the request says was made with this job, word for word. */
async function wasStartedSo(transaction: StoreTransaction, jobId: string, said: readonly Lot[]) {
  const lines = await transaction.changeLog.findMany({
    where: { jobId, act: 'made' },
    orderBy: { seq: 'asc' },
    select: { thing: true, thingId: true, after: true },
  });
  const made = new Map(lines.map((line) => [`${line.thing} ${line.thingId}`, line.after]));
  return said.every(({ kind, rows }) =>
    rows.every((row) => {
      const after = made.get(`${kind} ${row.id}`);
      return Boolean(after) && sameContent(row, JSON.parse(after!) as Fields);
    }),
  );
}

async function takenId(transaction: StoreTransaction, said: readonly Lot[]) {
  for (const { kind, at, rows } of said) {
    const there = await rowsOf(transaction, kind).where({ id: { in: rows.map(({ id }) => id) } });
    const i = rows.findIndex(({ id }) => id === there[0]?.id);
    if (i >= 0) return refused('other-content', `${at}.${i}.id`);
  }
  return undefined;
}
