import { setImmediate as oneTurn } from 'node:timers/promises';
import { store } from './client';
import { entrySql } from './entry-sql';
import type { EntryKind } from './entry-kinds';

/** One entry as the statement takes it; its first column is its id. */
export type PackedEntry = readonly [id: string, ...rest: unknown[]];

/** The number in the book of each entry that was kept now. */
export type KeptNow = Map<string, number>;

type Waiting = {
  entries: readonly PackedEntry[];
  resolve: (kept: KeptNow) => void;
  reject: (error: unknown) => void;
};

/** As many entries as one statement keeps before others get their turn. */
const entriesMax = 1000;

/**
 * Keeps entries in one statement with those of all other requests that wait at the same moment: the disk is
 * waited for once for all of them, so that ten tablets are not ten times as slow as one. It answers when the
 * entries are on the disk.
 *
 * Of two requests that bring the same id, only the first is told that it was kept. Where a statement fails
 * that keeps the entries of several, each is tried by itself, so that nobody fails for the fault of another.
 */
export function writeTogether(kind: EntryKind, entries: readonly PackedEntry[]): Promise<KeptNow> {
  return new Promise((resolve, reject) => {
    const queue = queueOf(kind);
    queue.waiting.push({ entries, resolve, reject });
    if (!queue.writing) void writeAll(kind, queue);
  });
}

type Queue = { waiting: Waiting[]; writing: boolean };
const queues = new Map<string, Queue>();

function queueOf({ name }: EntryKind): Queue {
  const queue = queues.get(name) ?? { waiting: [], writing: false };
  queues.set(name, queue);
  return queue;
}

async function writeAll(kind: EntryKind, queue: Queue): Promise<void> {
  queue.writing = true;
  while (queue.waiting.length > 0) {
    await oneTurn(); // others whose request is read in this turn come along
    const group = nextGroup(queue.waiting);
    try {
      await write(kind, group);
    } catch (error) {
      if (group.length === 1) group[0]!.reject(error);
      else for (const one of group) await write(kind, [one]).catch(one.reject);
    }
  }
  queue.writing = false;
}

function nextGroup(waiting: Waiting[]): Waiting[] {
  let entries = 0;
  const fits = (one: Waiting) => (entries += one.entries.length) <= entriesMax;
  const end = waiting.findIndex((one, i) => !fits(one) && i > 0);
  return waiting.splice(0, end === -1 ? waiting.length : end);
}

async function write(kind: EntryKind, group: readonly Waiting[]): Promise<void> {
  const { engine, write: run } = await store();
  const all = JSON.stringify(group.flatMap(({ entries }) => entries));
  const rows = (await run(entrySql(engine, kind).keep, [all])) as [string, number][];
  const kept = new Map(rows);
  for (const { entries, resolve } of group) {
    const own: KeptNow = new Map();
    for (const [id] of entries) {
      const seq = kept.get(id);
      if (seq !== undefined) own.set(id, seq);
      kept.delete(id);
    }
    resolve(own);
  }
}
