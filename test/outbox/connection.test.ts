import { forceCloseDatabase } from 'fake-indexeddb';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { createConnection, databaseName, type Connection } from '@/lib/outbox/connection';
import { OutboxError, type TroubleCode } from '@/lib/outbox/trouble';
import { createWorld, quiet } from './world';

afterEach(() => {
  vi.restoreAllMocks();
});

const put = (connection: Connection) =>
  connection.run('readwrite', (tx) => tx.objectStore('meta').put(1, 'deviceSeq'));
const get = (connection: Connection) =>
  connection.run('readonly', (tx) => tx.objectStore('meta').get('deviceSeq'));

/** A request that is never answered. */
const silentRequest = () => Object.setPrototypeOf(new EventTarget(), IDBRequest.prototype);

/** A connection with everything it opened and everything it told. */
function watched(version?: number) {
  const world = createWorld();
  const env = world.environment();
  const opened: IDBDatabase[] = [];
  const open = env.indexedDB.open.bind(env.indexedDB);
  vi.spyOn(env.indexedDB, 'open').mockImplementation((name, asked) => {
    const request = open(name, asked);
    request.addEventListener('success', () => opened.push(request.result));
    return request;
  });
  const told: (TroubleCode | null)[] = [];
  const onTrouble = (code: TroubleCode | null) => void told.push(code);
  const connection = createConnection(
    env,
    version === undefined ? { onTrouble } : { onTrouble, version },
  );
  return { world, env, opened, told, connection, openRaw: open };
}

describe('the connection to the database', () => {
  it('asks for strict durability unless told otherwise', async () => {
    const { connection, opened } = watched();
    await put(connection);
    const transaction = vi.spyOn(opened[0]!, 'transaction');
    await put(connection);
    await connection.run('readwrite', async () => 0, 'relaxed');
    expect(transaction.mock.calls.map(([, mode, options]) => [mode, options])).toEqual([
      ['readwrite', { durability: 'strict' }],
      ['readwrite', { durability: 'relaxed' }],
    ]);
  });

  it('resolves on complete and not on the success of the last request', async () => {
    const { connection, opened } = watched();
    await put(connection);
    const order: string[] = [];
    const transaction = opened[0]!.transaction.bind(opened[0]!);
    vi.spyOn(opened[0]!, 'transaction').mockImplementation((...asked) => {
      const tx = transaction(...asked);
      tx.addEventListener('complete', () => order.push('complete'));
      return tx;
    });
    await connection.run('readwrite', async (tx) => {
      await tx.objectStore('meta').put(2, 'deviceSeq');
      order.push('success');
    });
    order.push('resolved');
    expect(order).toEqual(['success', 'complete', 'resolved']);
  });

  it('rejects when everything succeeded but the commit', async () => {
    const { connection } = watched();
    await put(connection);
    const failing = connection.run('readwrite', async (tx) => {
      await tx.objectStore('meta').put(2, 'deviceSeq');
      tx.abort();
    });
    await expect(failing).rejects.toMatchObject({ code: 'outbox/storage-lost' });
    expect(await get(connection)).toBe(1);
  });

  it('writes nothing of work that fails of itself, and passes the failure on', async () => {
    const { connection } = watched();
    await put(connection);
    const failing = connection.run('readwrite', async (tx) => {
      await tx.objectStore('meta').put(2, 'deviceSeq');
      throw new OutboxError('outbox/no-reason', 'no');
    });
    await expect(failing).rejects.toMatchObject({ code: 'outbox/no-reason' });
    expect(await get(connection)).toBe(1);
  });

  it.each([
    ['with a close event', forceCloseDatabase],
    ['without a word', (db: IDBDatabase) => db.close()],
  ])('opens once more when it was dropped %s', async (_, end) => {
    const { connection, opened, told } = watched();
    await put(connection);
    end(opened[0] as never);
    await quiet();
    expect(await get(connection)).toBe(1);
    expect(opened).toHaveLength(2);
    expect(told).toEqual([]);
  });

  it('is loud when the second connection is dead too, and works again afterwards', async () => {
    const { connection, opened, told } = watched();
    await put(connection);
    const dead = vi.spyOn(Object.getPrototypeOf(opened[0]) as IDBDatabase, 'transaction');
    dead.mockImplementation(() => {
      throw new DOMException('Connection to Indexed Database server lost', 'UnknownError');
    });
    await expect(put(connection)).rejects.toMatchObject({ code: 'outbox/storage-lost' });
    expect(dead).toHaveBeenCalledTimes(2);
    expect(told).toEqual(['outbox/storage-lost']);
    dead.mockRestore();
    await put(connection);
    expect(told).toEqual(['outbox/storage-lost', null]);
  });

  it('is loud when a transaction neither completes nor fails', async () => {
    const { connection, world } = watched();
    await put(connection);
    const hanging = connection.run('readwrite', () => new Promise(() => undefined));
    const outcome = expect(hanging).rejects.toMatchObject({ code: 'outbox/storage-lost' });
    for (let i = 0; i < 4; i += 1) {
      await quiet();
      world.clock.advance(10_000);
    }
    await outcome;
  });

  it('lets a newer tab upgrade at once, and then says that it is the old one', async () => {
    const { connection, openRaw, told } = watched();
    await put(connection);
    const upgraded = await new Promise<IDBDatabase>((resolve, reject) => {
      const request = openRaw(databaseName, 2);
      request.addEventListener('success', () => resolve(request.result));
      request.addEventListener('blocked', () => reject(new Error('blocked')));
    });
    expect(upgraded.version).toBe(2);
    await expect(put(connection)).rejects.toMatchObject({ code: 'outbox/old-tab' });
    expect(told).toEqual(['outbox/old-tab']);
  });

  it('says that an old tab blocks the upgrade, and goes on once that tab is closed', async () => {
    const { connection, openRaw, told, world, env } = watched(2);
    const old = await new Promise<IDBDatabase>((resolve) => {
      const request = openRaw(databaseName, 1);
      request.addEventListener('upgradeneeded', () => {
        const entries = request.result.createObjectStore('entries', { keyPath: 'id' });
        entries.createIndex('sending', ['state', 'deviceSeq']);
        request.result.createObjectStore('meta');
      });
      request.addEventListener('success', () => resolve(request.result));
    });
    const first = put(connection);
    const outcome = expect(first).rejects.toMatchObject({ code: 'outbox/blocked' });
    await quiet();
    expect(told).toEqual([]);
    world.clock.advance(4000);
    await outcome;
    expect(told).toEqual(['outbox/blocked']);

    old.close();
    await quiet();
    await put(connection);
    expect(told).toEqual(['outbox/blocked', null]);
    expect(env.indexedDB.open).toHaveBeenCalledTimes(1);
  });

  it('says so when the database neither opens nor is blocked', async () => {
    const { env, world } = watched();
    const indexedDB = { open: silentRequest } as unknown as IDBFactory;
    const hanging = createConnection({ ...env, indexedDB });
    const outcome = expect(put(hanging)).rejects.toMatchObject({ code: 'outbox/storage-lost' });
    for (let i = 0; i < 3; i += 1) {
      await quiet();
      world.clock.advance(4000);
    }
    await outcome;
  });
});
