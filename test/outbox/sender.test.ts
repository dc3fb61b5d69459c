import { afterEach, describe, expect, it, vi } from 'vitest';
import { batchCountMax } from '@/lib/outbox/sender';
import { batchMax } from '@/lib/schema/reading';
import { createWorld, keepMany, pass, quiet, reading, voiding } from './world';

afterEach(() => {
  vi.restoreAllMocks();
});

const dayMs = 24 * 3_600_000;
const seqsOf = (requests: { entries: { deviceSeq: number }[] }[]) =>
  requests.map(({ entries }) => entries.map(({ deviceSeq }) => deviceSeq));

/** A disk that reads but no longer writes what became of an entry. */
function breakBookkeeping() {
  const put = IDBObjectStore.prototype.put;
  return vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (
    this: IDBObjectStore,
    ...asked
  ) {
    const state = (asked[0] as { state?: unknown }).state;
    if (state === 'in the book') throw new DOMException('full', 'QuotaExceededError');
    return put.apply(this, asked);
  });
}

describe('sending', () => {
  it('takes no more in one request than the server does', () => {
    expect(batchCountMax).toBe(batchMax);
  });

  it('sends an entry at once and has it in the book', async () => {
    const world = createWorld();
    const tab = world.tab();
    const { id } = await tab.keep(reading('20.010'));
    await quiet();
    expect([...world.book.rows.keys()]).toEqual([id]);
    expect((await tab.copies())[0]).toMatchObject({ state: 'in the book', seq: 1 });
    expect(tab.snapshot()).toMatchObject({ unsent: 0, trouble: null });
  });

  it('sends in the order of the running numbers, a hundred at most, one kind at a time', async () => {
    const world = createWorld();
    world.book.broken = 'no network';
    const tab = world.tab();
    const first = await keepMany(tab, 120);
    await tab.keep(voiding(first[0]!.id));
    await tab.keep(reading('21.000'));
    await pass(world, 2000);
    world.book.broken = null;
    world.book.requests.length = 0;
    tab.env.page('online');
    await quiet(2000);
    expect(world.book.requests.map(({ path, entries }) => [path, entries.length])).toEqual([
      ['/api/v1/readings', 100],
      ['/api/v1/readings', 20],
      ['/api/v1/corrections', 1],
      ['/api/v1/readings', 1],
    ]);
    expect(seqsOf(world.book.requests).flat()).toEqual(
      Array.from({ length: 122 }, (_, i) => i + 1),
    );
  });

  it('sends after a restart what an earlier page had kept', async () => {
    const world = createWorld();
    world.book.broken = 'no network';
    const killed = world.tab();
    await keepMany(killed, 3);
    killed.kill();
    world.book.broken = null;
    world.tab();
    await quiet();
    expect(world.book.rows.size).toBe(3);
  });

  it('does not keep twice when a restart cut off the answer', async () => {
    const world = createWorld();
    const killed = world.tab();
    world.book.broken = 'late';
    await keepMany(killed, 3);
    await quiet();
    killed.kill();
    world.book.broken = null;
    const tab = world.tab();
    await pass(world, 70_000, 2000);
    expect(world.book.rows.size).toBe(3);
    expect((await tab.copies()).map(({ state }) => state)).toEqual(Array(3).fill('in the book'));
  });

  it('strikes off only the ids that the answer names', async () => {
    const world = createWorld();
    world.book.broken = 'no network';
    const tab = world.tab();
    await keepMany(tab, 4);
    await pass(world, 2000);
    world.book.broken = null;
    world.book.faults = ['names half'];
    world.book.requests.length = 0;
    tab.env.page('online');
    await quiet();
    expect(tab.snapshot()).toMatchObject({ unsent: 2, trouble: 'outbox/not-understood' });
    await pass(world, 2000);
    expect(tab.snapshot()).toMatchObject({ unsent: 0, trouble: null });
    expect(seqsOf(world.book.requests)).toEqual([
      [1, 2, 3, 4],
      [1, 3],
    ]);
  });

  it('lets an entry that no answer names hold up nothing behind it', async () => {
    const world = createWorld();
    world.book.broken = 'no network';
    const tab = world.tab();
    const [first] = await keepMany(tab, 1);
    const strike = await tab.keep(voiding(first!.id));
    await pass(world, 2000);
    world.book.broken = null;
    world.book.faults = ['names none'];
    tab.env.page('online');
    await quiet();
    expect(world.book.rows.has(strike.id)).toBe(true);
    expect(tab.snapshot().unsent).toBe(1);
  });

  it.each(['no network', 'late', 'a portal answers', 401, 403, 404, 429, 500, 503] as const)(
    'never gives up, through a day of "%s"',
    async (fault) => {
      const world = createWorld();
      world.book.broken = fault;
      const tab = world.tab();
      await keepMany(tab, 2);
      await pass(world, dayMs / 48, 15_000);
      world.clock.advance(dayMs);
      await quiet();
      expect(tab.snapshot()).toMatchObject({ unsent: 2, tray: [] });
      expect(tab.snapshot().trouble).not.toBeNull();
      world.book.broken = null;
      await pass(world, 80_000, 20_000);
      expect(tab.snapshot()).toMatchObject({ unsent: 0, trouble: null });
      expect(world.book.rows.size).toBe(2);
    },
  );

  it('rests longer and longer, to a minute at most', async () => {
    const world = createWorld();
    world.book.broken = 503;
    const tab = world.tab();
    await tab.keep(reading('20.010'));
    await pass(world, 60_000, 250);
    const inFirstMinute = world.book.requests.length;
    expect(inFirstMinute).toBeGreaterThanOrEqual(6);
    expect(inFirstMinute).toBeLessThanOrEqual(9);
    await pass(world, 300_000, 1000);
    world.book.requests.length = 0;
    await pass(world, 600_000, 1000);
    expect(world.book.requests.length).toBeGreaterThanOrEqual(10);
    expect(world.book.requests.length).toBeLessThanOrEqual(20);
  });

  it('rests as long as a busy server asks, whatever wakes it but a person', async () => {
    const world = createWorld();
    world.book.broken = 429;
    world.book.retryAfter = '30';
    const tab = world.tab();
    await tab.keep(reading('20.010'));
    await quiet();
    expect(world.book.requests).toHaveLength(1);
    await tab.keep(reading('20.011'));
    tab.env.page('online');
    tab.env.page('visible');
    await pass(world, 29_000, 1000);
    expect(world.book.requests).toHaveLength(1);
    tab.sendNow();
    await quiet();
    expect(world.book.requests).toHaveLength(2);
    await pass(world, 31_000, 1000);
    expect(world.book.requests).toHaveLength(3);
  });

  it.each(['online', 'visible'] as const)(
    'goes at once when the page becomes %s',
    async (event) => {
      const world = createWorld();
      world.book.broken = 'no network';
      const tab = world.tab();
      await tab.keep(reading('20.010'));
      await pass(world, 60_000, 5000);
      world.book.broken = null;
      tab.env.page(event);
      await quiet();
      expect(tab.snapshot().unsent).toBe(0);
    },
  );

  it('tries within a second when an entry is added while it rests, once and not for each', async () => {
    const world = createWorld();
    world.book.broken = 'no network';
    const tab = world.tab();
    await tab.keep(reading('20.010'));
    await pass(world, 120_000, 5000);
    world.book.requests.length = 0;
    await keepMany(tab, 10);
    await pass(world, 1000);
    expect(world.book.requests).toHaveLength(1);
  });

  it('is not put off for ever by entries that come quicker than its second', async () => {
    const world = createWorld();
    world.book.broken = 'no network';
    const tab = world.tab();
    await tab.keep(reading('20.010'));
    await pass(world, 120_000, 5000);
    world.book.requests.length = 0;
    for (let i = 0; i < 10; i += 1) {
      await tab.keep(reading(`21.00${i}`));
      await pass(world, 600, 600);
    }
    expect(world.book.requests.length).toBeGreaterThanOrEqual(3);
  });

  it('remembers what woke it while it was waiting for an answer', async () => {
    const world = createWorld();
    world.book.broken = 503;
    const tab = world.tab();
    await tab.keep(reading('20.010'));
    await pass(world, 200_000, 5000);
    world.book.broken = 'late';
    tab.sendNow();
    await quiet();
    tab.env.page('online');
    world.book.broken = 'no network';
    world.book.requests.length = 0;
    await pass(world, 16_000, 1000);
    expect(world.book.requests).toHaveLength(1);
  });

  it('is not woken by a page that is hidden', async () => {
    const world = createWorld();
    world.book.broken = 'no network';
    const tab = world.tab();
    await tab.keep(reading('20.010'));
    await pass(world, 120_000, 5000);
    world.book.requests.length = 0;
    tab.env.page('hidden');
    await quiet();
    expect(world.book.requests).toEqual([]);
  });

  it('starts with a short rest again once things have gone well, here or in another tab', async () => {
    const world = createWorld();
    world.book.broken = 503;
    const [tab, other] = [world.tab(), world.tab()];
    await tab.keep(reading('20.010'));
    await pass(world, 200_000, 5000);
    world.book.broken = null;
    other.sendNow();
    await pass(world, 61_000, 1000);
    other.stop();
    expect(tab.snapshot().unsent).toBe(0);
    world.book.broken = 503;
    world.book.requests.length = 0;
    await tab.keep(reading('20.011'));
    await pass(world, 4000, 250);
    expect(world.book.requests.length).toBeGreaterThanOrEqual(3);
  });

  it('rests longer and longer when the answers name nothing', async () => {
    const world = createWorld();
    world.book.broken = 'names none';
    const tab = world.tab();
    await keepMany(tab, 3);
    await pass(world, 600_000, 1000);
    expect(world.book.requests.length).toBeLessThanOrEqual(26);
  });

  it('rests no longer than a minute, however long a server asks', async () => {
    const world = createWorld();
    world.book.faults = [503];
    world.book.retryAfter = '86400';
    const tab = world.tab();
    await tab.keep(reading('20.010'));
    await pass(world, 61_000, 1000);
    expect(tab.snapshot().unsent).toBe(0);
  });

  it('is not hurried by entries when a server is busy and does not say for how long', async () => {
    const world = createWorld();
    world.book.broken = 429;
    const tab = world.tab();
    await tab.keep(reading('20.010'));
    await pass(world, 120_000, 1000);
    tab.sendNow();
    await quiet();
    world.book.requests.length = 0;
    await tab.keep(reading('20.011'));
    await pass(world, 5000);
    expect(world.book.requests).toEqual([]);
  });

  it('finds by its timer what another tab left behind without a word', async () => {
    const world = createWorld();
    world.book.broken = 'no network';
    const mute = world.tab({ channel: true });
    await mute.keep(reading('20.010'));
    await quiet();
    mute.kill();
    const tab = world.tab({ channel: true });
    await quiet();
    world.book.broken = null;
    await pass(world, 21_000, 1000);
    expect(world.book.rows.size).toBe(1);
    tab.stop();
  });

  it('sends nothing, asks nothing and takes no lock while there is nothing to send', async () => {
    const world = createWorld();
    const tab = world.tab({ locks: true });
    await quiet();
    const put = vi.spyOn(IDBObjectStore.prototype, 'put');
    await pass(world, 300_000, 10_000);
    expect(world.book.requests).toEqual([]);
    expect(put).not.toHaveBeenCalled();
    tab.stop();
  });

  it('sends nothing more, and opens nothing, once it is stopped', async () => {
    const world = createWorld();
    world.book.broken = 'no network';
    const tab = world.tab();
    await tab.keep(reading('20.010'));
    await quiet();
    const close = vi.spyOn(IDBDatabase.prototype, 'close');
    tab.stop();
    await quiet();
    expect(close).toHaveBeenCalledTimes(1);
    const open = vi.spyOn(tab.env.indexedDB, 'open');
    world.book.requests.length = 0;
    world.book.broken = null;
    tab.env.page('online');
    tab.sendNow();
    await pass(world, 120_000, 10_000);
    expect(world.book.requests).toEqual([]);
    expect(open).not.toHaveBeenCalled();
  });
});

describe('an entry that the server refuses', () => {
  it('needs a look, with the reason, and the rest gets into the book', async () => {
    const world = createWorld();
    const tab = world.tab();
    const id = tab.env.newId();
    world.book.refused.set(id, 'no-piece');
    await tab.keep(reading('20.010', { id }));
    await keepMany(tab, 2);
    await quiet();
    expect(world.book.rows.size).toBe(2);
    expect(tab.snapshot()).toMatchObject({
      unsent: 0,
      tray: [{ id, state: 'needs a look', refusal: { code: 'no-piece', at: 'pieceId' } }],
      trouble: null,
    });
  });

  it('stays in the tray through restarts until a person sends it again', async () => {
    const world = createWorld();
    const first = world.tab();
    const id = first.env.newId();
    world.book.refused.set(id, 'no-piece');
    await first.keep(reading('20.010', { id }));
    await quiet();
    first.kill();
    const tab = world.tab();
    await pass(world, 120_000, 10_000);
    expect(tab.snapshot().tray.map((entry) => entry.id)).toEqual([id]);
    expect(world.book.requests).toHaveLength(1);
    world.book.refused.clear();
    await tab.resend(id);
    await quiet();
    expect(tab.snapshot()).toMatchObject({ unsent: 0, tray: [] });
    expect(world.book.rows.has(id)).toBe(true);
  });

  it('leaves the tray when it is set aside, and stays on the device with the reason', async () => {
    const world = createWorld();
    const tab = world.tab();
    const id = tab.env.newId();
    world.book.refused.set(id, 'no-piece');
    await tab.keep(reading('20.010', { id }));
    await quiet();
    await tab.setAside(id, 'taken on the wrong piece');
    await pass(world, 60_000, 10_000);
    expect(tab.snapshot()).toMatchObject({ unsent: 0, tray: [] });
    expect(world.book.requests).toHaveLength(1);
    expect(await tab.copies()).toMatchObject([
      { id, state: 'set aside', aside: { reason: 'taken on the wrong piece' } },
    ]);
  });

  it.each([400, 409, 413, 422])(
    'is found alone when a request is refused whole with %d',
    async (status) => {
      const world = createWorld();
      world.book.broken = 'no network';
      const tab = world.tab();
      const entries = await keepMany(tab, 100);
      const culprit = entries[41]!;
      world.book.poison.set(culprit.id, status);
      await pass(world, 2000);
      world.book.broken = null;
      world.book.requests.length = 0;
      tab.env.page('online');
      await quiet(5000);
      expect(tab.snapshot().tray).toMatchObject([
        {
          id: culprit.id,
          refusal: { code: 'bad-batch', at: 'entries', says: 'not of this world' },
        },
      ]);
      expect(tab.snapshot().unsent).toBe(0);
      expect(world.book.rows.size).toBe(99);
      expect(world.book.requests.length).toBeLessThan(30);
    },
  );
});

describe('a good answer that the device cannot note', () => {
  it('does not become a storm of sending again', async () => {
    const world = createWorld();
    const tab = world.tab();
    await quiet();
    const broken = breakBookkeeping();
    await keepMany(tab, 3);
    await pass(world, 600_000, 5000);
    const sent = world.book.requests.flatMap(({ entries }) => entries.map(({ id }) => id));
    expect(sent).toHaveLength(3);
    expect(new Set(sent).size).toBe(3);
    expect(tab.snapshot().trouble).toBe('outbox/storage-full');
    broken.mockRestore();
    await pass(world, 61_000, 5000);
    expect(tab.snapshot()).toMatchObject({ unsent: 0, trouble: null });
    expect(world.book.requests.flatMap(({ entries }) => entries)).toHaveLength(3);
    expect(world.book.rows.size).toBe(3);
  });

  it('does not hold up what comes after it', async () => {
    const world = createWorld();
    const tab = world.tab();
    await quiet();
    breakBookkeeping();
    await tab.keep(reading('20.010'));
    await pass(world, 5000);
    const { id } = await tab.keep(reading('20.011'));
    await pass(world, 2000);
    expect(world.book.rows.has(id)).toBe(true);
  });

  it('is sent once more after a restart, known by then, and noted', async () => {
    const world = createWorld();
    const killed = world.tab();
    await quiet();
    const broken = breakBookkeeping();
    await keepMany(killed, 2);
    await pass(world, 5000);
    killed.kill();
    broken.mockRestore();
    const tab = world.tab();
    await pass(world, 2000);
    expect(tab.snapshot()).toMatchObject({ ready: true, unsent: 0 });
    expect(world.book.rows.size).toBe(2);
    expect((await tab.copies()).map(({ state }) => state)).toEqual(['in the book', 'in the book']);
  });
});

describe('a device whose clock is an hour off', () => {
  it.each([3_600_000, -3_600_000])('is measured at the first answer, by %d ms', async (skewMs) => {
    const world = createWorld();
    world.skewMs = skewMs;
    const tab = world.tab();
    expect(tab.snapshot()).toMatchObject({ skewMs: null, clockOff: false });
    await tab.keep(reading('20.010'));
    await quiet();
    expect(tab.snapshot()).toMatchObject({ skewMs, clockOff: true });
    expect(await tab.keep(reading('20.011'))).toMatchObject({ skewMs });
    tab.kill();
    const next = world.tab();
    await quiet();
    expect(next.snapshot()).toMatchObject({ skewMs, clockOff: true });
  });

  it('is not told of for two minutes or less', async () => {
    const world = createWorld();
    world.skewMs = 120_000;
    const tab = world.tab();
    await tab.keep(reading('20.010'));
    await quiet();
    expect(tab.snapshot()).toMatchObject({ skewMs: 120_000, clockOff: false });
    world.skewMs = 120_001;
    await tab.keep(reading('20.011'));
    await quiet();
    expect(tab.snapshot()).toMatchObject({ skewMs: 120_001, clockOff: true });
  });

  it('is measured by the Date header when every row was known already', async () => {
    const world = createWorld();
    world.skewMs = 3_600_000;
    world.book.faults = ['late'];
    const tab = world.tab();
    await tab.keep(reading('20.010'));
    await pass(world, 17_000);
    expect(world.book.rows.size).toBe(1);
    expect(Math.abs(tab.snapshot().skewMs! - 3_600_000)).toBeLessThanOrEqual(500);
  });

  it('goes on sending while its clock is set back in the middle of a rest', async () => {
    const world = createWorld();
    world.book.broken = 503;
    const tab = world.tab({ locks: true });
    await tab.keep(reading('20.010'));
    await pass(world, 30_000, 1000);
    world.skewMs = -3_600_000;
    world.book.broken = null;
    await pass(world, 61_000, 1000);
    expect(tab.snapshot().unsent).toBe(0);
  });
});

describe('second copies', () => {
  it('are swept after thirty days by the server’s clock, once something has been sent', async () => {
    const world = createWorld();
    const tab = world.tab();
    const [old] = await keepMany(tab, 1);
    await quiet();
    world.clock.advance(31 * dayMs);
    await quiet();
    expect((await tab.copies()).map(({ id }) => id)).toEqual([old!.id]);
    const { id } = await tab.keep(reading('20.011'));
    await quiet();
    expect((await tab.copies()).map((entry) => entry.id)).toEqual([id]);
    expect(world.book.rows.size).toBe(2);
  });

  it('are not swept by a device that jumped to 2099', async () => {
    const world = createWorld();
    const tab = world.tab();
    await keepMany(tab, 2);
    await quiet();
    world.skewMs = Date.UTC(2099, 0, 1) - world.clock.nowMs();
    await pass(world, 60_000, 10_000);
    await tab.keep(reading('20.011'));
    await pass(world, 10_000);
    expect(await tab.copies()).toHaveLength(3);
  });
});
