import type { Outcome } from '@/lib/schema/reading';
import type { Connection, Tx } from './connection';
import { candidateId, healDeviceId, knownDeviceId } from './device-id';
import { nextDeviceSeq, rememberDeviceSeq } from './device-seq';
import type { Draft, Entry } from './entry';
import type { Environment } from './environment';
import { localInstant } from './local-instant';
import { OutboxError, StorageFullError } from './trouble';

/** The server's word on one entry. */
export type Judged = { id: string; outcome: Outcome };

export type Box = {
  keep: (draft: Draft) => Promise<Entry>;
  unsent: (countMax: number, except: ReadonlySet<string>) => Promise<Entry[]>;
  settle: (judged: readonly Judged[], skewMs: number | null) => Promise<Entry[]>;
  resend: (id: string) => Promise<Entry>;
  setAside: (id: string, reason: string) => Promise<Entry>;
  sendAgain: (deviceSeqs: readonly number[]) => Promise<Entry[]>;
  /** All that is unsent or in the tray, the rows of some ids besides, and what the header shows. */
  look: (alsoIds: readonly string[]) => Promise<Look>;
  copies: (jobId?: string) => Promise<Entry[]>;
  sweep: (nowMs: number) => Promise<number>;
};

type Look = { entries: Entry[]; lastKeptAtMs: number | null; skewMs: number | null };

/** How long an acknowledged row stays as a second copy. */
const secondCopyMs = 30 * 24 * 3600 * 1000;

/** The entries of this device on its disk. Every change is one strict transaction and harmless to repeat. */
export function createBox(env: Environment, connection: Connection): Box {
  const afterwards = createAfterwards(env);
  return {
    async keep(draft) {
      const entry = await keep(env, connection, draft);
      afterwards(entry);
      return entry;
    },

    unsent: (countMax, except) =>
      connection.run('readonly', async (tx) => {
        const queue = await inState(tx, 'on this device', countMax + except.size);
        return queue.filter(({ id }) => !except.has(id)).slice(0, countMax);
      }),

    settle: (judged, skewMs) =>
      connection.run('readwrite', async (tx) => {
        const changed: Entry[] = [];
        for (const { id, outcome } of judged) {
          const entry = await tx.objectStore('entries').get(id);
          const settled = entry && settledBy(entry, outcome, env.nowMs() - (skewMs ?? 0));
          if (settled) changed.push(await write(tx, settled));
        }
        if (skewMs !== null) await tx.objectStore('meta').put(skewMs, 'skewMs');
        return changed;
      }),

    resend: (id) =>
      connection.run('readwrite', async (tx) => {
        const entry = await find(tx, id, ['needs a look', 'set aside']);
        return write(tx, { ...entry, state: 'on this device', refusal: null, aside: null });
      }),

    async setAside(id, reason) {
      const said = reason.trim();
      if (said === '') throw new OutboxError('outbox/no-reason', 'setAside requires a reason');
      return connection.run('readwrite', async (tx) => {
        const entry = await find(tx, id, ['needs a look']);
        const aside = { reason: said, atMs: env.nowMs() };
        return write(tx, { ...entry, state: 'set aside', aside });
      });
    },

    sendAgain: (deviceSeqs) =>
      connection.run('readwrite', async (tx) => {
        const wanted = new Set(deviceSeqs);
        const copies = (await inState(tx, 'in the book')).filter((copy) =>
          wanted.has(copy.deviceSeq),
        );
        const changed: Entry[] = [];
        for (const copy of copies) {
          changed.push(await write(tx, { ...copy, state: 'on this device', inBookAtMs: null }));
        }
        return changed;
      }),

    look: (alsoIds) =>
      connection.run('readonly', async (tx) => {
        const found = new Map<string, Entry>();
        for (const state of ['on this device', 'needs a look'] as const) {
          for (const entry of await inState(tx, state)) found.set(entry.id, entry);
        }
        for (const id of alsoIds) {
          const entry = found.has(id) ? undefined : await tx.objectStore('entries').get(id);
          if (entry !== undefined) found.set(id, entry);
        }
        const meta = tx.objectStore('meta');
        return {
          entries: [...found.values()],
          lastKeptAtMs: numberOrNull(await meta.get('lastKeptAtMs')),
          skewMs: numberOrNull(await meta.get('skewMs')),
        };
      }),

    copies: (jobId) =>
      connection.run('readonly', async (tx) => {
        const entries = tx.objectStore('entries');
        const found = await (jobId === undefined
          ? entries.getAll()
          : entries.index('job').getAll(jobId));
        return found.sort((a, b) => a.deviceSeq - b.deviceSeq);
      }),

    sweep: (nowMs) =>
      connection.run('readwrite', async (tx) => {
        const entries = tx.objectStore('entries');
        const old = IDBKeyRange.upperBound(nowMs - secondCopyMs, true);
        const keys = await entries.index('inBook').getAllKeys(old);
        await Promise.all(keys.map((key) => entries.delete(key)));
        return keys.length;
      }),
  };
}

async function keep(env: Environment, connection: Connection, asked: Draft): Promise<Entry> {
  const atMs = env.nowMs();
  const draft: Draft & { id: string; deviceTime: string } = {
    ...asked,
    id: asked.id ?? env.newId(),
    deviceTime: asked.deviceTime ?? localInstant(atMs, env.offsetMin(atMs)),
  };
  try {
    let candidate: string | null = null;
    // Asked for together, written together and committed at once: each wait for an answer would come on top of
    // the time until a person is told that it is kept.
    return await connection.run('readwrite', async (tx) => {
      const entries = tx.objectStore('entries');
      const meta = tx.objectStore('meta');
      const [known, idThere, counter, skew] = await Promise.all([
        entries.get(draft.id),
        meta.get('deviceId'),
        meta.get('deviceSeq'),
        meta.get('skewMs'),
      ]);
      if (known !== undefined) return sameOrThrow(known, draft);
      const deviceId = knownDeviceId(idThere) ?? (candidate ??= candidateId(env));
      const deviceSeq = nextDeviceSeq(env, counter);
      const held = { deviceId, deviceSeq, keptAtMs: atMs, skewMs: numberOrNull(skew) };
      const rest = [
        ...(deviceId === idThere ? [] : [meta.put(deviceId, 'deviceId')]),
        meta.put(deviceSeq, 'deviceSeq'),
        meta.put(atMs, 'lastKeptAtMs'),
      ];
      const written = write(tx, entryOf(draft, held));
      tx.commit();
      const [entry] = await Promise.all([written, ...rest]);
      return entry;
    });
  } catch (error) {
    if (error instanceof StorageFullError) {
      throw new StorageFullError(error.message, draft, error.cause);
    }
    if (error instanceof OutboxError) {
      throw new OutboxError(error.code, error.message, draft, error.cause);
    }
    throw error;
  }
}

/**
 * What is noted beside the database once an entry is kept: looking into cookies is slow, and nobody waits for it.
 */
function createAfterwards(env: Environment): (entry: Entry) => void {
  let healed: string | null = null;
  return ({ deviceId, deviceSeq }) => {
    env.after(0, () => {
      if (healed !== deviceId) healDeviceId(env, deviceId);
      healed = deviceId;
      rememberDeviceSeq(env, deviceSeq);
    });
  };
}

function entryOf(
  draft: Draft & { id: string; deviceTime: string },
  held: Pick<Entry, 'deviceId' | 'deviceSeq' | 'keptAtMs' | 'skewMs'>,
): Entry {
  const { id, deviceTime, kind, jobId } = draft;
  const row = { ...draft.row, id, deviceTime, deviceSeq: held.deviceSeq };
  return {
    ...held,
    ...({ kind, row } as Pick<Entry, 'kind' | 'row'>),
    id,
    jobId,
    state: 'on this device',
    revision: 0,
    seq: null,
    receivedAt: null,
    inBookAtMs: null,
    refusal: null,
    aside: null,
  } as Entry;
}

/** The same entry asked to be kept again is kept already; another one under its id is a mistake of the caller. */
function sameOrThrow(known: Entry, draft: Draft & { id: string }): Entry {
  const asKept = known.row as Record<string, unknown>;
  const differs = Object.entries(draft.row).some(([field, value]) => asKept[field] !== value);
  if (differs || known.kind !== draft.kind) {
    throw new OutboxError('outbox/id-taken', `keep requires a new id, got ${draft.id} twice`);
  }
  return known;
}

function settledBy(entry: Entry, outcome: Outcome, serverNowMs: number): Entry | null {
  if (outcome.state === 'refused') {
    if (entry.state !== 'on this device') return null;
    const { code, at, says } = outcome;
    return { ...entry, state: 'needs a look', refusal: { code, at, says } };
  }
  if (entry.state === 'in the book') return null;
  const { seq, receivedAt } = outcome;
  return {
    ...entry,
    state: 'in the book',
    refusal: null,
    seq,
    receivedAt,
    inBookAtMs: serverNowMs,
  };
}

async function write(tx: Tx<'readwrite'>, entry: Entry): Promise<Entry> {
  const next = { ...entry, revision: entry.revision + 1 };
  await tx.objectStore('entries').put(next);
  return next;
}

function inState(
  tx: Tx<'readonly'> | Tx<'readwrite'>,
  state: Entry['state'],
  countMax?: number,
): Promise<Entry[]> {
  const range = IDBKeyRange.bound([state, 0], [state, Number.MAX_SAFE_INTEGER]);
  return (tx as Tx<'readonly'>).objectStore('entries').index('sending').getAll(range, countMax);
}

async function find(
  tx: Tx<'readwrite'>,
  id: string,
  states: readonly Entry['state'][],
): Promise<Entry> {
  const entry = await tx.objectStore('entries').get(id);
  if (entry === undefined || !states.includes(entry.state)) {
    const got = entry === undefined ? 'none' : `one that is ${entry.state}`;
    throw new OutboxError(
      'outbox/no-such-entry',
      `requires ${states.join(' or ')} ${id}, got ${got}`,
    );
  }
  return entry;
}

const numberOrNull = (value: unknown) => (typeof value === 'number' ? value : null);
