import { afterEach, describe, expect, it, vi } from 'vitest';
import { entriesFor } from '@/lib/outbox/snapshot';
import { createWorld, jobId, keepMany, pass, quiet, reading, voiding } from './world';

afterEach(() => {
  vi.restoreAllMocks();
});

const elsewhere = '019a0000-0000-7000-8000-0000000000ff';

describe('what screens see of the outbox', () => {
  it('is one and the same object until something changes', async () => {
    const world = createWorld();
    const tab = world.tab();
    await quiet();
    const before = tab.snapshot();
    await pass(world, 60_000, 5000);
    tab.env.page('visible');
    await quiet();
    expect(tab.snapshot()).toBe(before);
    await tab.keep(reading('20.010'));
    expect(tab.snapshot()).not.toBe(before);
  });

  it('shows an entry as soon as it is kept, and tells its listeners', async () => {
    const world = createWorld();
    world.book.broken = 'no network';
    const tab = world.tab();
    await quiet();
    const listener = vi.fn();
    const stop = tab.subscribe(listener);
    const { id } = await tab.keep(reading('20.010'));
    expect(listener).toHaveBeenCalled();
    expect(tab.snapshot()).toMatchObject({ unsent: 1, lastKeptAtMs: tab.env.nowMs() });
    expect(entriesFor(tab.snapshot(), jobId).map((entry) => entry.id)).toEqual([id]);
    stop();
    listener.mockClear();
    await tab.keep(reading('20.011'));
    expect(listener).not.toHaveBeenCalled();
  });

  it('keeps an entry on the board when it gets into the book, for sheets that lag behind', async () => {
    const world = createWorld();
    const tab = world.tab();
    const { id } = await tab.keep(reading('20.010'));
    await quiet();
    expect(tab.snapshot().unsent).toBe(0);
    expect(entriesFor(tab.snapshot(), jobId)).toMatchObject([{ id, state: 'in the book', seq: 1 }]);
  });

  it('gives each job its own, the same array while only another job changes', async () => {
    const world = createWorld();
    const tab = world.tab();
    await tab.keep(reading('20.010'));
    await quiet();
    const mine = entriesFor(tab.snapshot(), jobId);
    await tab.keep(reading('20.011', { jobId: elsewhere }));
    await quiet();
    expect(entriesFor(tab.snapshot(), jobId)).toBe(mine);
    expect(entriesFor(tab.snapshot(), elsewhere)).toHaveLength(1);
    expect(entriesFor(tab.snapshot(), 'none')).toBe(entriesFor(tab.snapshot(), 'other'));
  });

  it('is there again after a restart', async () => {
    const world = createWorld();
    world.book.broken = 'no network';
    const killed = world.tab();
    const entries = await keepMany(killed, 3);
    killed.kill();
    const tab = world.tab();
    expect(tab.snapshot().ready).toBe(false);
    await quiet();
    expect(tab.snapshot()).toMatchObject({
      ready: true,
      unsent: 3,
      lastKeptAtMs: entries[2]!.keptAtMs,
    });
    expect(entriesFor(tab.snapshot(), jobId)).toEqual(entries);
  });

  it('does not make a kept entry look lost when a screen fails', async () => {
    const world = createWorld();
    const tab = world.tab();
    await quiet();
    const reported: unknown[] = [];
    const report = (error: unknown) => void reported.push(error);
    const before = process.listeners('unhandledRejection');
    process.removeAllListeners('unhandledRejection').on('unhandledRejection', report);
    tab.subscribe(() => {
      throw new Error('a screen fell over');
    });
    const { id } = await tab.keep(reading('20.010'));
    await quiet();
    process.removeAllListeners('unhandledRejection');
    before.forEach((listener) => process.on('unhandledRejection', listener));
    expect(world.book.rows.has(id)).toBe(true);
    expect(reported[0]).toMatchObject({ message: 'a screen fell over' });
  });

  it('tells of a full storage until something could be kept again', async () => {
    const world = createWorld();
    const tab = world.tab();
    await tab.keep(reading('20.010'));
    await quiet();
    const full = vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
      throw new DOMException('full', 'QuotaExceededError');
    });
    const failed = tab.keep(reading('20.011'));
    await expect(failed).rejects.toMatchObject({ code: 'outbox/storage-full' });
    await pass(world, 30_000, 5000);
    tab.env.page('visible');
    await quiet();
    expect(tab.snapshot().trouble).toBe('outbox/storage-full');
    full.mockRestore();
    await tab.keep(reading('20.012'));
    expect(tab.snapshot().trouble).toBeNull();
  });

  it('goes on sending what it holds while the storage is full, without locks too', async () => {
    const world = createWorld();
    world.book.broken = 'no network';
    const tab = world.tab({ locks: true });
    await keepMany(tab, 2);
    await pass(world, 5000);
    vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
      throw new DOMException('full', 'QuotaExceededError');
    });
    world.book.broken = null;
    world.book.requests.length = 0;
    tab.env.page('online');
    await pass(world, 60_000, 5000);
    expect(world.book.rows.size).toBe(2);
    expect(world.book.requests).toHaveLength(1);
  });

  it('asks once that the browser should not clear the store', async () => {
    const world = createWorld();
    const tab = world.tab();
    await quiet();
    expect(tab.env.asked.persist).toBe(0);
    await keepMany(tab, 2);
    expect(tab.env.asked.persist).toBe(1);
  });
});

describe('two tabs of one device', () => {
  it.each([
    ['with locks', {}],
    ['without locks, as on plain http', { locks: true }],
  ] as const)(
    'share one row of running numbers and send each entry once, %s',
    async (_, without) => {
      const world = createWorld();
      const [one, two] = [world.tab(without), world.tab(without)];
      const texts = Array.from({ length: 20 }, (__, i) => `20.0${10 + i}`);
      const entries = await Promise.all(
        texts.map((text, i) => (i % 2 ? one : two).keep(reading(text))),
      );
      await pass(world, 30_000, 1000);
      const numbers = entries.map(({ deviceSeq }) => deviceSeq).sort((a, b) => a - b);
      expect(numbers).toEqual(texts.map((__, i) => i + 1));
      expect(new Set(entries.map(({ deviceId }) => deviceId)).size).toBe(1);
      const sent = world.book.requests.flatMap(({ entries: rows }) => rows.map(({ id }) => id));
      expect(sent).toHaveLength(20);
      expect(world.book.rows.size).toBe(20);
      expect([one, two].map((tab) => tab.snapshot().unsent)).toEqual([0, 0]);
    },
  );

  it('see at once what the other has kept and what became of it', async () => {
    const world = createWorld();
    world.book.broken = 'no network';
    const [one, two] = [world.tab(), world.tab()];
    await quiet();
    const entry = await one.keep(reading('20.010'));
    await quiet();
    expect(two.snapshot()).toMatchObject({ unsent: 1, lastKeptAtMs: entry.keptAtMs });
    expect(entriesFor(two.snapshot(), jobId)).toEqual([entry]);
    world.book.broken = null;
    one.sendNow();
    await quiet();
    expect(two.snapshot()).toMatchObject({ unsent: 0, skewMs: 0 });
    expect(entriesFor(two.snapshot(), jobId)).toMatchObject([{ state: 'in the book' }]);
  });

  it('see it when next looked at where there is no wire between them', async () => {
    const world = createWorld();
    world.book.broken = 'no network';
    const [one, two] = [world.tab({ channel: true }), world.tab({ channel: true })];
    await quiet();
    await one.keep(reading('20.010'));
    await quiet();
    expect(two.snapshot().unsent).toBe(0);
    two.env.page('visible');
    await quiet();
    expect(two.snapshot().unsent).toBe(1);
    world.book.broken = null;
    one.sendNow();
    await pass(world, 21_000, 1000);
    expect(two.snapshot().unsent).toBe(0);
    expect(entriesFor(two.snapshot(), jobId)).toMatchObject([{ state: 'in the book' }]);
  });

  it('let the other send when the one at work was closed in the middle', async () => {
    const world = createWorld();
    const [one, two] = [world.tab({ locks: true }), world.tab({ locks: true })];
    await quiet();
    world.book.broken = 'late';
    await one.keep(reading('20.010'));
    await quiet();
    one.kill();
    world.book.broken = null;
    two.sendNow();
    await pass(world, 30_000, 1000);
    expect(two.snapshot().unsent).toBe(0);
    expect(world.book.rows.size).toBe(1);
  });

  it('do not show an older copy of an entry that comes late over the wire', async () => {
    const world = createWorld();
    const [one, two] = [world.tab(), world.tab()];
    await quiet();
    const entry = await one.keep(reading('20.010'));
    await quiet();
    expect(two.snapshot().unsent).toBe(0);
    const third = world.environment();
    third.channel!.post({ entries: [entry], lastKeptAtMs: null, skewMs: null });
    third.channel!.post('something else');
    await quiet();
    expect(two.snapshot()).toMatchObject({ unsent: 0, lastKeptAtMs: entry.keptAtMs });
  });
});

describe('second copies that the server lacks', () => {
  it('are sent again by their running numbers', async () => {
    const world = createWorld();
    const tab = world.tab();
    const [a, b] = await keepMany(tab, 2);
    await tab.keep(voiding(a!.id));
    await quiet();
    world.book.rows.delete(b!.id);
    await tab.sendAgain([2]);
    expect(tab.snapshot().unsent).toBe(1);
    await quiet();
    expect(world.book.rows.has(b!.id)).toBe(true);
    expect(tab.snapshot().unsent).toBe(0);
  });
});
