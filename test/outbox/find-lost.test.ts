import { describe, expect, it } from 'vitest';
import { createWorld, pass, quiet, reading } from './world';

describe('an entry the book has lost without an error', () => {
  it('is found and sent again when the page is opened anew', async () => {
    const world = createWorld();
    const first = world.tab();
    const kept = [];
    for (const text of ['20.010', '20.011', '20.012']) kept.push(await first.keep(reading(text)));
    await pass(world, 10_000, 1000);
    expect(world.book.rows.size).toBe(3);
    first.stop();
    // As a notebook put back from an older copy: one from the middle is gone, and the last.
    world.book.rows.delete(kept[1]!.id);
    world.book.rows.delete(kept[2]!.id);

    const second = world.tab();
    await pass(world, 20_000, 1000);
    expect([...world.book.rows.keys()].sort()).toEqual(kept.map(({ id }) => id).sort());
    expect(second.snapshot()).toMatchObject({ unsent: 0, tray: [], trouble: null });
  });

  it('is not looked for where nothing was ever acknowledged, nor again within ten minutes', async () => {
    const world = createWorld();
    world.book.broken = 'no network';
    const tab = world.tab();
    await tab.keep(reading('20.010'));
    await pass(world, 60_000, 5000);
    expect(world.book.comparisons).toEqual([]);
    world.book.broken = null;
    await pass(world, 120_000, 5000);
    expect(world.book.rows.size).toBe(1);
    const asked = world.book.comparisons.length;
    tab.env.page('visible');
    await quiet();
    expect(world.book.comparisons.length).toBe(asked);
    await pass(world, 1_300_000, 20_000);
    expect(world.book.comparisons.length).toBeGreaterThan(asked);
  });

  it('waits for a server that gives no answer, and sends nothing on the strength of that', async () => {
    const world = createWorld();
    const tab = world.tab();
    const { id } = await tab.keep(reading('20.010'));
    await pass(world, 2000, 500);
    world.book.rows.delete(id);
    world.book.broken = 'no network';
    await pass(world, 60_000, 5000);
    expect(tab.snapshot().unsent).toBe(0);
    world.book.broken = null;
    await pass(world, 60_000, 5000);
    expect(world.book.rows.has(id)).toBe(true);
  });
});
