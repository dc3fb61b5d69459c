import { wrap, type DBSchema, type IDBPDatabase, type IDBPTransaction } from 'idb';
import type { Entry } from './entry';
import type { Environment } from './environment';
import { OutboxError, StorageFullError, type TroubleCode } from './trouble';
import { withTimeout } from './with-timeout';

export const databaseName = 'fitwright';
const databaseVersion = 1;
const storeNames: Store[] = ['entries', 'meta'];

type Store = 'entries' | 'meta';

export interface Shape extends DBSchema {
  entries: {
    key: string;
    value: Entry;
    indexes: { sending: [string, number]; job: string; inBook: number };
  };
  /** deviceId, deviceSeq, lastKeptAtMs, skewMs, lease. */
  meta: { key: string; value: unknown };
}

type Mode = 'readonly' | 'readwrite';
export type Tx<M extends Mode> = IDBPTransaction<Shape, Store[], M>;

export type Connection = {
  /**
   * One transaction over both stores. Resolves when it is complete: with `strict`, when the disk has it.
   * After any failure the handle is dropped and, unless the store is full, the work is done once more on a
   * fresh one; so `work` must be harmless to repeat, and must wait for nothing but the transaction.
   * @throws {OutboxError} when the second attempt fails too
   */
  run: <M extends Mode, T>(
    mode: M,
    work: (tx: Tx<M>) => Promise<T>,
    durability?: 'strict' | 'relaxed',
  ) => Promise<T>;
  close: () => void;
};

type Options = {
  /** Told of every change for the worse or the better; null is "works". */
  onTrouble?: (code: TroubleCode | null) => void;
  version?: number;
  openWithinMs?: number;
  completeWithinMs?: number;
};

/**
 * The one connection of this tab to the database `fitwright`, opened at first use.
 *
 * A newer tab that has to upgrade the database gets it at once: this one lets go and then refuses with
 * `outbox/old-tab`. An older tab that does not let go is told of as `outbox/blocked` after
 * `openWithinMs`; the wait goes on behind that, and the next use succeeds once the other tab is closed.
 */
export function createConnection(
  env: Pick<Environment, 'indexedDB' | 'after'>,
  options: Options = {},
): Connection {
  const { version = databaseVersion, openWithinMs = 4000, completeWithinMs = 10_000 } = options;
  let handle: Handle | null = null;
  let trouble: TroubleCode | null = null;

  const tell = (code: TroubleCode | null) => {
    if (code === trouble) return;
    trouble = code;
    options.onTrouble?.(code);
  };

  const drop = (dropped: Handle) => {
    if (handle === dropped) handle = null;
    dropped.abandon();
  };

  async function attempt<M extends Mode, T>(
    mode: M,
    work: (tx: Tx<M>) => Promise<T>,
    durability: 'strict' | 'relaxed',
  ): Promise<T> {
    const used = (handle ??= open(env, version, () => drop(used)));
    try {
      const db = await withTimeout(env, openWithinMs, used.db, () => used.late());
      const done = inTransaction(db.transaction(storeNames, mode, { durability }), work);
      return await withTimeout(env, completeWithinMs, done, () => new Error('no complete in time'));
    } catch (error) {
      if (!(error instanceof OutboxError)) drop(used);
      throw error;
    }
  }

  return {
    async run(mode, work, durability = 'strict') {
      try {
        let result;
        try {
          result = await attempt(mode, work, durability);
        } catch (error) {
          if (!isWorthAnotherTry(error)) throw error;
          result = await attempt(mode, work, durability);
        }
        // Reading works on a full store, so only keeping something shows that there is room again.
        const kept = mode === 'readwrite' && durability === 'strict';
        if (trouble !== 'outbox/storage-full' || kept) tell(null);
        return result;
      } catch (error) {
        const told = asOutboxError(error);
        if (told.code in storageCodes) tell(told.code as TroubleCode);
        throw told;
      }
    },
    close() {
      if (handle !== null) drop(handle);
    },
  };
}

const storageCodes: Partial<Record<OutboxError['code'], true>> = {
  'outbox/storage-full': true,
  'outbox/storage-lost': true,
  'outbox/blocked': true,
  'outbox/old-tab': true,
};

type Handle = {
  db: Promise<IDBPDatabase<Shape>>;
  /** What to say when it has not opened in time. */
  late: () => Error;
  /** Closes it, now or as soon as it has opened. */
  abandon: () => void;
};

function open(env: Pick<Environment, 'indexedDB'>, version: number, onDead: () => void): Handle {
  let blocked = false;
  const request = env.indexedDB.open(databaseName, version);
  request.addEventListener('blocked', () => {
    blocked = true;
  });
  request.addEventListener('upgradeneeded', (event) => upgrade(request.result, event.oldVersion));
  const db = (wrap(request) as Promise<IDBPDatabase<Shape>>).then((opened) => {
    opened.addEventListener('versionchange', onDead);
    opened.addEventListener('close', onDead);
    return opened;
  });
  db.catch(() => undefined);
  return {
    db,
    late: () =>
      blocked
        ? new OutboxError('outbox/blocked', 'an older tab holds the database open')
        : new Error('the database did not open in time'),
    abandon() {
      db.then(
        (opened) => opened.close(),
        () => undefined,
      );
    },
  };
}

function upgrade(db: IDBDatabase, fromVersion: number): void {
  if (fromVersion < 1) {
    const entries = db.createObjectStore('entries', { keyPath: 'id' });
    entries.createIndex('sending', ['state', 'deviceSeq']);
    entries.createIndex('job', 'jobId');
    entries.createIndex('inBook', 'inBookAtMs');
    db.createObjectStore('meta');
  }
}

async function inTransaction<M extends Mode, T>(
  tx: Tx<M>,
  work: (tx: Tx<M>) => Promise<T>,
): Promise<T> {
  const done = tx.done;
  done.catch(() => undefined);
  try {
    const result = await work(tx);
    await done;
    return result;
  } catch (error) {
    // A full store fails the whole transaction; its requests then only say that they were called off.
    const reason: unknown = tx.error ?? error;
    try {
      tx.abort();
    } catch {
      // It is over already.
    }
    throw reason;
  }
}

const nameOf = (error: unknown) => (error as { name?: unknown } | null)?.name;
const isWorthAnotherTry = (error: unknown) =>
  !(error instanceof OutboxError) &&
  nameOf(error) !== 'QuotaExceededError' &&
  nameOf(error) !== 'VersionError';

function asOutboxError(error: unknown): OutboxError {
  if (error instanceof OutboxError) return error;
  if (nameOf(error) === 'QuotaExceededError') {
    return new StorageFullError('the device has no room left', null, error);
  }
  if (nameOf(error) === 'VersionError') {
    return new OutboxError('outbox/old-tab', 'a newer tab has upgraded the database', null, error);
  }
  return new OutboxError('outbox/storage-lost', `the database failed twice: ${error}`, null, error);
}
