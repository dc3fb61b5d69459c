import type { z } from 'zod';
import type { Batch, Outcome } from '@/lib/schema/reading';
import { strayCharacter } from '@/lib/schema/stray-character';
import { store } from './client';
import { entrySql } from './entry-sql';
import type { EntryKind } from './entry-kinds';
import { wakeFeed } from './feed';
import { refusals, type RefusalCode } from './refused';
import { sameContent } from './same-content';
import type { Fields } from './thing-types';
import { writeTogether, type PackedEntry } from './write-together';

type Entry = Fields & { id: string };
type Kept = { id: string; seq: number; receivedAt: string };

/**
 * Keeps the entries of a batch, each judged on its own, and says of each, in the order sent, what became
 * of it. When this answers, what is `kept` or `known` is on the disk.
 *
 * An id that is in the book with the same content is `known`; with another content, or with a running
 * number of its device that another entry has, it is refused.
 */
export async function keepEntries(
  kind: EntryKind,
  { deviceId, entries }: z.infer<typeof Batch>,
): Promise<Outcome[]> {
  const judged = entries.map((entry) => judge(kind, entry));
  const first = new Map<string, Entry>();
  for (const { entry } of judged) {
    if (entry !== undefined && !first.has(entry.id)) first.set(entry.id, entry);
  }
  const outcomes = await keepAll(kind, deviceId, [...first.values()]);
  return judged.map(({ entry, outcome }) => {
    if (entry === undefined) return outcome;
    const found = outcomes.get(entry.id)!;
    const earlier = first.get(entry.id)!;
    if (entry === earlier) return found;
    if (!sameContent(entry, earlier)) return refuse(kind, entry.id, 'other-content', 'id');
    return found.state === 'kept' ? { ...found, state: 'known' } : found;
  });
}

type Judged = { entry: Entry; outcome?: never } | { entry?: never; outcome: Outcome };

/** The entry as its schema understands it, or why it is none. */
function judge(kind: EntryKind, given: unknown): Judged {
  const id = (given as { id?: unknown } | null)?.id;
  const name = typeof id === 'string' ? id.slice(0, 64) : '';
  const parsed = kind.schema.safeParse(given);
  if (!parsed.success) {
    const issue = parsed.error.issues[0]!;
    const at = issue.path.join('.');
    return { outcome: refuse(kind, name, 'wrong-shape', at, issue.message) };
  }
  const stray = strayCharacter(parsed.data);
  if (stray === undefined) return { entry: parsed.data as Entry };
  const says = 'It contains a character that cannot be kept';
  return { outcome: refuse(kind, name, 'wrong-shape', stray, says) };
}

async function keepAll(
  kind: EntryKind,
  deviceId: string,
  entries: readonly Entry[],
): Promise<Map<string, Outcome>> {
  const outcomes = new Map<string, Outcome>();
  // A second round only where something came into the book between two statements.
  for (let round = 0; round < 3 && outcomes.size < entries.length; round += 1) {
    const open = entries.filter(({ id }) => !outcomes.has(id));
    const receivedAt = new Date().toISOString();
    const packed = open.map((entry) => pack(kind, entry, receivedAt, deviceId));
    for (const [id, seq] of await writeTogether(kind, packed)) {
      outcomes.set(id, { id, state: 'kept', seq, receivedAt });
    }
    const left = open.filter(({ id }) => !outcomes.has(id));
    if (left.length > 0) await explain(kind, deviceId, left, outcomes);
  }
  if (outcomes.size < entries.length)
    throw new Error(`no reason found why a ${kind.name} was not kept`);
  if ([...outcomes.values()].some(({ state }) => state === 'kept')) wakeFeed();
  return outcomes;
}

/** Finds out of entries that were not kept whether they are known, or else what is wrong with them. */
async function explain(
  kind: EntryKind,
  deviceId: string,
  entries: readonly Entry[],
  outcomes: Map<string, Outcome>,
): Promise<void> {
  const { engine, read } = await store();
  const packed = JSON.stringify(entries.map((entry) => pack(kind, entry, '', deviceId)));
  const rows = await read(entrySql(engine, kind).explain, [packed]);
  entries.forEach((entry, i) => {
    const { id } = entry;
    const [text, sameSeqId, fault] = rows[i] as [string | null, string | null, number | null];
    if (text !== null) {
      const row = JSON.parse(text) as Fields & Kept;
      outcomes.set(
        id,
        sameContent({ ...entry, deviceId }, row)
          ? { id, state: 'known', seq: row.seq, receivedAt: row.receivedAt }
          : refuse(kind, id, 'other-content', 'id'),
      );
    } else if (sameSeqId !== null) {
      outcomes.set(id, refuse(kind, id, 'device-seq-taken', 'deviceSeq'));
    } else if (fault !== null) {
      const { code, at } = kind.faults[fault]!;
      outcomes.set(id, refuse(kind, id, code, at));
    }
  });
}

/** The entry as the statements take it: its columns in their order, when it came, from which device. */
function pack(kind: EntryKind, entry: Entry, receivedAt: string, deviceId: string): PackedEntry {
  const columns = kind.columns.map(({ name }) => entry[name]);
  return [...columns, receivedAt, deviceId] as unknown as PackedEntry;
}

function refuse(
  kind: EntryKind,
  id: string,
  code: RefusalCode,
  at: string,
  says: string = refusals[code],
): Outcome {
  return { id, state: 'refused', code: `${kind.name}/${code}`, at, says };
}
