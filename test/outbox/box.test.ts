import { afterEach, describe, expect, it, vi } from 'vitest';
import { createBox } from '@/lib/outbox/box';
import { createConnection } from '@/lib/outbox/connection';
import { OutboxError, StorageFullError } from '@/lib/outbox/trouble';
import { NewCorrection, NewReading, type Outcome } from '@/lib/schema/reading';
import { createWorld, jobId, quiet, reading, startMs, voiding } from './world';

afterEach(() => {
  vi.restoreAllMocks();
});

const dayMs = 24 * 3_600_000;
const none: ReadonlySet<string> = new Set();

function open() {
  const world = createWorld();
  const env = world.environment();
  return { world, env, box: createBox(env, createConnection(env)) };
}

const kept = (id: string, seq = 1): { id: string; outcome: Outcome } => ({
  id,
  outcome: { id, state: 'kept', seq, receivedAt: '2026-11-25T09:00:00.000Z' },
});
const refused = (id: string): { id: string; outcome: Outcome } => ({
  id,
  outcome: { id, state: 'refused', code: 'no-piece', at: 'pieceId', says: 'no such piece' },
});

/** A store whose disk is full: the request fails, or it succeeds and the commit fails. */
function fillDisk(when: 'at the request' | 'at the commit') {
  const put = IDBObjectStore.prototype.put;
  return vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (
    this: IDBObjectStore,
    ...asked
  ) {
    if (when === 'at the request') throw new DOMException('full', 'QuotaExceededError');
    const request = put.apply(this, asked);
    const tx = this.transaction as IDBTransaction & { _abort: (name: string) => void };
    // The name the imitation gives to "the browser aborts it".
    // oxlint-disable-next-line no-underscore-dangle
    request.addEventListener('success', () => tx._abort('QuotaExceededError'));
    return request;
  });
}

describe('keeping', () => {
  it('writes the row the server expects, stamped with id, time, offset and running number', async () => {
    const { box } = open();
    const first = await box.keep(reading('20.010'));
    const second = await box.keep(voiding(first.id));
    expect(NewReading.parse(first.row)).toEqual(first.row);
    expect(NewCorrection.parse(second.row)).toEqual(second.row);
    expect([first.deviceSeq, second.deviceSeq]).toEqual([1, 2]);
    expect(first.row.deviceTime).toBe('2026-11-25T10:00:00.000+01:00');
    expect(first).toMatchObject({ state: 'on this device', keptAtMs: startMs, jobId });
  });

  it('gives numbers without gaps to entries kept at the same moment', async () => {
    const { box } = open();
    const texts = Array.from({ length: 25 }, (_, i) => `20.0${10 + i}`);
    const entries = await Promise.all(texts.map((text) => box.keep(reading(text))));
    const numbers = entries.map(({ deviceSeq }) => deviceSeq);
    expect(numbers.sort((a, b) => a - b)).toEqual(texts.map((_, i) => i + 1));
  });

  it('keeps what was typed to the letter', async () => {
    const { box } = open();
    await box.keep(reading('  20,010 mm '));
    expect((await box.copies())[0]!.row).toMatchObject({ text: '  20,010 mm ' });
  });

  it('keeps one entry when the same id is kept twice', async () => {
    const { box, env } = open();
    const id = env.newId();
    const first = await box.keep(reading('20.010', { id }));
    expect(await box.keep(reading('20.010', { id }))).toEqual(first);
    expect(await box.copies()).toHaveLength(1);
    expect((await box.keep(reading('20.011'))).deviceSeq).toBe(2);
  });

  it('refuses another entry under an id that is taken', async () => {
    const { box, env } = open();
    const id = env.newId();
    await box.keep(reading('20.010', { id }));
    const other = box.keep(reading('20.011', { id }));
    await expect(other).rejects.toMatchObject({ code: 'outbox/id-taken' });
    expect(await box.copies()).toHaveLength(1);
  });

  it('remembers with the entry how far the clock was known to be off', async () => {
    const { box } = open();
    const first = await box.keep(reading('20.010'));
    await box.settle([kept(first.id)], 3_600_000);
    expect(first.skewMs).toBeNull();
    expect((await box.keep(reading('20.011'))).skewMs).toBe(3_600_000);
  });
});

describe('keeping when the storage is full', () => {
  it.each(['at the request', 'at the commit'] as const)(
    'says so in a class of its own and gives the value back, full %s',
    async (when) => {
      const { box } = open();
      await box.keep(reading('20.010'));
      const full = fillDisk(when);
      const attempts = vi.spyOn(IDBDatabase.prototype, 'transaction');
      const error: unknown = await box.keep(reading('20.011')).catch((thrown: unknown) => thrown);
      expect(error).toBeInstanceOf(StorageFullError);
      expect(error).toMatchObject({
        code: 'outbox/storage-full',
        draft: { kind: 'reading', jobId, row: { text: '20.011' } },
      });
      expect(attempts).toHaveBeenCalledTimes(1);
      full.mockRestore();
      expect(await box.copies()).toHaveLength(1);
    },
  );

  it('takes no running number, and keeps the value it gave back once there is room', async () => {
    const { box, world } = open();
    const full = fillDisk('at the commit');
    const error = await box.keep(reading('20.010')).catch((thrown: unknown) => thrown);
    full.mockRestore();
    world.clock.advance(60_000);
    const { draft } = error as OutboxError;
    const entry = await box.keep(draft!);
    expect(entry).toMatchObject({ id: draft!.id, deviceSeq: 1 });
    expect(entry.row.deviceTime).toBe('2026-11-25T10:00:00.000+01:00');
  });

  it('can still read what it holds', async () => {
    const { box } = open();
    const entry = await box.keep(reading('20.010'));
    fillDisk('at the request');
    expect(await box.unsent(100, none)).toEqual([entry]);
  });
});

describe('keeping when the connection is lost', () => {
  it('keeps once when the first attempt was written although its complete was never heard', async () => {
    const { box, world } = open();
    await box.keep(reading('20.010'));
    const transaction = IDBDatabase.prototype.transaction;
    vi.spyOn(IDBDatabase.prototype, 'transaction').mockImplementationOnce(function (
      this: IDBDatabase,
      ...asked
    ) {
      const tx = transaction.apply(this, asked);
      tx.addEventListener('complete', (event) => event.stopImmediatePropagation());
      return tx;
    });
    const keeping = box.keep(reading('20.011'));
    await quiet();
    world.clock.advance(10_000);
    expect((await keeping).deviceSeq).toBe(2);
    expect((await box.copies()).map(({ deviceSeq }) => deviceSeq)).toEqual([1, 2]);
  });

  it('is loud and gives the value back when the second attempt fails too', async () => {
    const { box } = open();
    await box.keep(reading('20.009'));
    vi.spyOn(IDBDatabase.prototype, 'transaction').mockImplementation(() => {
      throw new DOMException('The database connection is closing', 'InvalidStateError');
    });
    const error = await box.keep(reading('20.010')).catch((thrown: unknown) => thrown);
    expect(error).toMatchObject({
      code: 'outbox/storage-lost',
      draft: { row: { text: '20.010' } },
    });
    expect(error).not.toBeInstanceOf(StorageFullError);
  });
});

describe('settling', () => {
  it('marks only the ids that are named', async () => {
    const { box } = open();
    const [a, b, c] = [
      await box.keep(reading('20.010')),
      await box.keep(reading('20.011')),
      await box.keep(reading('20.012')),
    ];
    await box.settle([kept(b.id, 7), refused(c.id)], null);
    const states = (await box.copies()).map(({ state, seq, refusal }) => [
      state,
      seq,
      refusal?.code,
    ]);
    expect(states).toEqual([
      ['on this device', null, undefined],
      ['in the book', 7, undefined],
      ['needs a look', null, 'no-piece'],
    ]);
    expect(await box.unsent(100, none)).toEqual([a]);
  });

  it('does not take out of the book what a late refusal names', async () => {
    const { box } = open();
    const { id } = await box.keep(reading('20.010'));
    await box.settle([kept(id)], null);
    expect(await box.settle([refused(id)], null)).toEqual([]);
    expect((await box.copies())[0]).toMatchObject({ state: 'in the book', refusal: null });
  });

  it('believes a late word that it is in the book, from the tray and from what was set aside', async () => {
    const { box } = open();
    const [a, b] = [await box.keep(reading('20.010')), await box.keep(reading('20.011'))];
    await box.settle([refused(a.id), refused(b.id)], null);
    await box.setAside(b.id, 'taken on the wrong piece');
    await box.settle([kept(a.id, 1), kept(b.id, 2)], null);
    expect((await box.copies()).map(({ state }) => state)).toEqual(['in the book', 'in the book']);
  });

  it('remembers how far the clock is off when an answer does not tell', async () => {
    const { box } = open();
    const [a, b] = [await box.keep(reading('20.010')), await box.keep(reading('20.011'))];
    await box.settle([kept(a.id, 1)], 3_600_000);
    await box.settle([kept(b.id, 2)], null);
    expect(await box.look([])).toMatchObject({ skewMs: 3_600_000 });
  });

  it('is harmless to repeat', async () => {
    const { box } = open();
    const { id } = await box.keep(reading('20.010'));
    const [once] = await box.settle([kept(id, 7)], null);
    expect(await box.settle([kept(id, 8)], null)).toEqual([]);
    expect(await box.copies()).toEqual([once]);
  });
});

describe('the tray', () => {
  it('is emptied by a person only: sent again, or set aside with a reason and kept', async () => {
    const { box } = open();
    const [a, b] = [await box.keep(reading('20.010')), await box.keep(reading('20.011'))];
    await box.settle([refused(a.id), refused(b.id)], null);
    expect(await box.resend(a.id)).toMatchObject({ state: 'on this device', refusal: null });
    const aside = await box.setAside(b.id, ' taken on the wrong piece ');
    expect(aside).toMatchObject({
      state: 'set aside',
      refusal: { code: 'no-piece' },
      aside: { reason: 'taken on the wrong piece', atMs: startMs },
    });
    expect(await box.unsent(100, none)).toHaveLength(1);
    expect(await box.copies()).toHaveLength(2);
    expect(await box.resend(b.id)).toMatchObject({ state: 'on this device', aside: null });
  });

  it('does not let an entry be set aside without a reason, or before the server has refused it', async () => {
    const { box } = open();
    const { id } = await box.keep(reading('20.010'));
    await expect(box.setAside(id, 'why')).rejects.toMatchObject({ code: 'outbox/no-such-entry' });
    await box.settle([refused(id)], null);
    await expect(box.setAside(id, '  ')).rejects.toMatchObject({ code: 'outbox/no-reason' });
    expect((await box.copies())[0]!.state).toBe('needs a look');
  });
});

describe('second copies', () => {
  it('are swept when they have been in the book for thirty days, and not a moment before', async () => {
    const { box, world } = open();
    const { id } = await box.keep(reading('20.010'));
    await box.settle([kept(id)], null);
    world.clock.advance(dayMs);
    const later = await box.keep(reading('20.011'));
    await box.settle([kept(later.id, 2)], null);
    expect(await box.sweep(startMs + 30 * dayMs)).toBe(0);
    expect(await box.sweep(startMs + 30 * dayMs + 1)).toBe(1);
    expect((await box.copies()).map((entry) => entry.id)).toEqual([later.id]);
  });

  it('are dated by the server’s clock when the device is in 2099', async () => {
    const { box, world } = open();
    world.skewMs = Date.UTC(2099, 0, 1) - startMs;
    const { id } = await box.keep(reading('20.010'));
    await box.settle([kept(id)], world.skewMs);
    expect(await box.sweep(startMs + 29 * dayMs)).toBe(0);
    expect(await box.sweep(startMs + 31 * dayMs)).toBe(1);
  });

  it('never go while they are unsent, in the tray or set aside, however old', async () => {
    const { box } = open();
    await box.keep(reading('20.010'));
    const [b, c] = [await box.keep(reading('20.011')), await box.keep(reading('20.012'))];
    await box.settle([refused(b.id), refused(c.id)], null);
    await box.setAside(c.id, 'taken on the wrong piece');
    expect(await box.sweep(startMs + 10_000 * dayMs)).toBe(0);
    expect(await box.copies()).toHaveLength(3);
  });

  it('go again when the server lacks them, by their running numbers', async () => {
    const { box } = open();
    const [a, b] = [await box.keep(reading('20.010')), await box.keep(reading('20.011'))];
    await box.settle([kept(a.id, 1), kept(b.id, 2)], null);
    const changed = await box.sendAgain([2, 99]);
    expect(changed.map(({ id }) => id)).toEqual([b.id]);
    expect((await box.unsent(100, none)).map(({ id }) => id)).toEqual([b.id]);
    expect(await box.sweep(startMs + 31 * dayMs)).toBe(1);
    expect((await box.copies()).map(({ id }) => id)).toEqual([b.id]);
  });

  it('are given for one job or for all', async () => {
    const { box } = open();
    const elsewhere = '019a0000-0000-7000-8000-0000000000ff';
    await box.keep(reading('20.010'));
    await box.keep(reading('20.011', { jobId: elsewhere }));
    expect(await box.copies()).toHaveLength(2);
    expect((await box.copies(elsewhere)).map(({ row }) => row)).toMatchObject([{ text: '20.011' }]);
  });
});

describe('the queue', () => {
  it('is in the order of the running numbers, cut to size, without the ones passed over', async () => {
    const { box } = open();
    const entries = [];
    for (let i = 0; i < 12; i += 1) entries.push(await box.keep(reading(`20.0${10 + i}`)));
    const skip = new Set([entries[0]!.id, entries[2]!.id, 'one that has left the queue']);
    expect((await box.unsent(3, skip)).map(({ deviceSeq }) => deviceSeq)).toEqual([2, 4, 5]);
    expect((await box.unsent(100, none)).map(({ deviceSeq }) => deviceSeq)).toEqual(
      entries.map((_, i) => i + 1),
    );
  });
});
