import { describe, expect, it } from 'vitest';
import { createConnection } from '@/lib/outbox/connection';
import { deviceId } from '@/lib/outbox/device-id';
import { createWorld, pass, reading, type World } from './world';

const open = (world: World) => {
  const env = world.environment();
  return { env, connection: createConnection(env) };
};
const ask = (world: World) => {
  const { env, connection } = open(world);
  return deviceId(env, connection).finally(() => connection.close());
};

describe('deviceId', () => {
  it('is made once and found in all three places', async () => {
    const world = createWorld();
    const id = await ask(world);
    expect(id).toMatch(/^[\da-f]{8}-[\da-f]{4}-7/);
    expect(await ask(world)).toBe(id);
    expect(world.keepsakes.map(({ words }) => words.get('fw-device'))).toEqual([id, id]);
  });

  it.each([
    ['the database', (world: World) => world.loseDatabase()],
    ['local storage', (world: World) => world.keepsakes[0]!.words.clear()],
    ['the cookie', (world: World) => world.keepsakes[1]!.words.clear()],
    [
      'database and local storage',
      (world: World) => {
        world.loseDatabase();
        world.keepsakes[0]!.words.clear();
      },
    ],
    [
      'database and cookie',
      (world: World) => {
        world.loseDatabase();
        world.keepsakes[1]!.words.clear();
      },
    ],
    ['both words', (world: World) => world.keepsakes.forEach(({ words }) => words.clear())],
  ])('is healed when %s was lost', async (_, lose) => {
    const world = createWorld();
    const id = await ask(world);
    lose(world);
    expect(await ask(world)).toBe(id);
    expect(world.keepsakes.map(({ words }) => words.get('fw-device'))).toEqual([id, id]);
    world.keepsakes.forEach(({ words }) => words.clear());
    expect(await ask(world)).toBe(id);
  });

  it('believes the database when the places disagree, and no word that is not an id', async () => {
    const world = createWorld();
    const id = await ask(world);
    world.keepsakes[0]!.words.set('fw-device', '019a0000-0000-7000-8000-00000000000f');
    world.keepsakes[1]!.words.set('fw-device', 'undefined');
    expect(await ask(world)).toBe(id);
    world.loseDatabase();
    world.keepsakes[0]!.words.set('fw-device', '[object Object]');
    expect(await ask(world)).toBe(id);
  });

  it('is one id for two tabs that start together', async () => {
    const world = createWorld();
    const forgetful = { ...world.environment(), keepsakes: [] };
    const one = createConnection(forgetful);
    const two = createConnection(forgetful);
    const ids = await Promise.all([deviceId(forgetful, one), deviceId(forgetful, two)]);
    expect(ids[0]).toBe(ids[1]);
  });

  it('is still known while the database cannot be opened', async () => {
    const world = createWorld();
    const id = await ask(world);
    const env = {
      ...world.environment(),
      indexedDB: {
        open() {
          throw new DOMException('not here', 'SecurityError');
        },
      } as unknown as IDBFactory,
    };
    expect(await deviceId(env, createConnection(env))).toBe(id);
  });

  it('uses no running number twice when the database was thrown away and the id was healed', async () => {
    const world = createWorld();
    const first = world.tab();
    const before = [await first.keep(reading('20.001')), await first.keep(reading('20.002'))];
    await pass(world, 1000);
    first.stop();
    world.loseDatabase();
    const second = world.tab();
    const after = [await second.keep(reading('20.003')), await second.keep(reading('20.004'))];
    await pass(world, 1000);
    second.stop();
    expect(after.map((entry) => entry.deviceId)).toEqual(before.map((entry) => entry.deviceId));
    expect(before.map((entry) => entry.deviceSeq)).toEqual([1, 2]);
    expect(after.map((entry) => entry.deviceSeq)).toEqual([102, 103]);
    expect(world.book.rows.size).toBe(4);
  });

  it('does not set the mark back when an old entry is kept again', async () => {
    const world = createWorld();
    const tab = world.tab();
    const id = tab.env.newId();
    await tab.keep(reading('20.001', { id }));
    await tab.keep(reading('20.002'));
    await tab.keep(reading('20.001', { id }));
    world.clock.advance(0);
    expect(world.keepsakes.map(({ words }) => words.get('fw-device-seq'))).toEqual(['2', '2']);
  });

  it('shares its running numbers with a sister address that sees the same cookie', async () => {
    const world = createWorld();
    const plain = world.tab();
    const first = await plain.keep(reading('20.001'));
    world.clock.advance(0);
    world.loseDatabase();
    const secure = world.tab();
    const there = await secure.keep(reading('20.002'));
    world.clock.advance(0);
    const here = await plain.keep(reading('20.003'));
    expect(there.deviceSeq).toBeGreaterThan(first.deviceSeq);
    expect(here.deviceSeq).toBe(there.deviceSeq + 1);
  });
});
