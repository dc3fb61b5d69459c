import { describe, expect, it, vi } from 'vitest';
import { createConnection } from '@/lib/outbox/connection';
import { createLease } from '@/lib/outbox/lease';
import { createWorld, quiet, type World } from './world';

function tab(world: World, withLocks: boolean) {
  const env = world.environment(withLocks ? {} : { locks: true });
  return createLease(env, createConnection(env));
}

/** Work that goes on until it is told to end. */
function work() {
  const ends: ((value: string) => void)[] = [];
  const done = new Promise<string>((resolve) => ends.push(resolve));
  return { run: () => done, end: () => ends[0]!('done') };
}

describe.each([
  ['the browser’s locks', true],
  ['a row in the database, as on plain http', false],
])('one sender at a time by %s', (_, withLocks) => {
  it('refuses the second tab while the first is at work, and not afterwards', async () => {
    const world = createWorld();
    const [one, two] = [tab(world, withLocks), tab(world, withLocks)];
    const long = work();
    const first = one(long.run);
    await quiet();
    let ran = false;
    const second = await two(async () => (ran = true));
    expect([second, ran]).toEqual([null, false]);
    long.end();
    expect(await first).toBe('done');
    expect(await two(async () => 'mine')).toBe('mine');
  });

  it('lets go when the work fails, and passes the failure on', async () => {
    const world = createWorld();
    const [one, two] = [tab(world, withLocks), tab(world, withLocks)];
    await expect(one(() => Promise.reject(new Error('disk')))).rejects.toThrow('disk');
    expect(await two(async () => 'mine')).toBe('mine');
  });
});

describe('a tab that froze while it was sending', () => {
  it('loses a browser lock after thirty refusals', async () => {
    const world = createWorld();
    const [frozen, other] = [tab(world, true), tab(world, true)];
    const robbed = frozen(work().run);
    await quiet();
    for (let i = 0; i < 30; i += 1) expect(await other(async () => 'mine')).toBeNull();
    expect(await other(async () => 'mine')).toBe('mine');
    expect(await robbed).toBeNull();

    const again = work();
    const atWork = frozen(again.run);
    await quiet();
    expect(await other(async () => 'mine')).toBeNull();
    again.end();
    expect(await atWork).toBe('done');
  });

  it('loses a row in the database when it has run out', async () => {
    const world = createWorld();
    const [frozen, other] = [tab(world, false), tab(world, false)];
    void frozen(work().run);
    await quiet();
    world.clock.advance(19_999);
    expect(await other(async () => 'mine')).toBeNull();
    world.clock.advance(1);
    expect(await other(async () => 'mine')).toBe('mine');
  });

  it('does not hold the row for an hour when the clock is put back by an hour', async () => {
    const world = createWorld();
    const [frozen, other] = [tab(world, false), tab(world, false)];
    void frozen(work().run);
    await quiet();
    world.skewMs = -3_600_000;
    expect(await other(async () => 'mine')).toBe('mine');
  });

  it('does not bar itself with a row it could not take away', async () => {
    const world = createWorld();
    const [one, two] = [tab(world, false), tab(world, false)];
    const stuck = vi.spyOn(IDBObjectStore.prototype, 'delete').mockImplementation(() => {
      throw new DOMException('full', 'QuotaExceededError');
    });
    expect(await one(async () => 'mine')).toBe('mine');
    stuck.mockRestore();
    expect(await two(async () => 'mine')).toBeNull();
    expect(await one(async () => 'mine')).toBe('mine');
    expect(await two(async () => 'mine')).toBe('mine');
  });

  it('does not take away a row that has become another tab’s', async () => {
    const world = createWorld();
    const [slow, other, third] = [tab(world, false), tab(world, false), tab(world, false)];
    const [first, second] = [work(), work()];
    const slowRun = slow(first.run);
    await quiet();
    world.clock.advance(20_000);
    const otherRun = other(second.run);
    await quiet();
    first.end();
    await slowRun;
    expect(await third(async () => 'mine')).toBeNull();
    second.end();
    await otherRun;
  });
});
