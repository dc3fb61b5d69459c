import { describe, expect, it, vi } from 'vitest';
import { followChanges } from '@/lib/outbox/live';
import type { Change } from '@/lib/schema/change';
import { createWorld, jobId } from './world';

const change = (seq: number): Change => ({
  seq,
  at: '2026-11-25T09:00:00.000Z',
  personId: null,
  deviceId: 'd',
  jobId,
  thing: 'piece',
  thingId: 'p',
  act: 'changed',
  after: { id: 'p' },
});

function follow(after = 10) {
  const world = createWorld();
  const env = world.environment();
  const seen: number[] = [];
  const onState = vi.fn();
  const stop = followChanges(env, { jobId, after, onChange: ({ seq }) => seen.push(seq), onState });
  const last = () => env.streams.at(-1)!;
  return { world, env, seen, onState, stop, last };
}

describe('following a job', () => {
  it('asks for the changes of the job after the sheet’s own number', () => {
    const { env, stop } = follow();
    expect(env.streams.map(({ url }) => url)).toEqual([`/api/v1/live?job=${jobId}&after=10`]);
    stop();
  });

  it('gives out every change in order and each once, under either name', () => {
    const { last, seen } = follow();
    last().send('message', change(11));
    last().send('change', change(14));
    last().send('message', change(14));
    last().send('message', change(12));
    last().send('message', change(15));
    expect(seen).toEqual([11, 14, 15]);
  });

  it('connects anew after a cut, from the last change it has given out, and rests in between', () => {
    const { last, env, world, seen } = follow();
    last().send('message', change(11));
    const cut = last();
    cut.send('error');
    expect(cut.closed).toBe(true);
    world.clock.advance(499);
    expect(env.streams).toHaveLength(1);
    world.clock.advance(501);
    expect(last().url).toMatch(/after=11$/);
    last().send('message', change(11));
    last().send('message', change(12));
    expect(seen).toEqual([11, 12]);
  });

  it('rests longer for every cut until the server is heard again', () => {
    const { last, env, world } = follow();
    const opened = () => env.streams.length;
    for (let i = 0; i < 6; i += 1) {
      last().send('error');
      world.clock.advance(60_000 - 1);
    }
    const before = opened();
    last().send('error');
    world.clock.advance(29_000);
    expect(opened()).toBe(before);
    world.clock.advance(31_000);
    last().send('beat');
    last().send('error');
    world.clock.advance(1000);
    expect(opened()).toBe(before + 2);
  });

  it('takes a silence of more than forty seconds for a cut', () => {
    const { last, env, world } = follow();
    last().send('beat');
    world.clock.advance(39_999);
    last().send('beat');
    world.clock.advance(39_999);
    expect(env.streams).toHaveLength(1);
    const silent = last();
    world.clock.advance(1);
    expect(silent.closed).toBe(true);
    expect(env.streams).toHaveLength(2);
  });

  it('takes a connection that never says a word for a cut', () => {
    const { env, world } = follow();
    world.clock.advance(40_000);
    expect(env.streams).toHaveLength(2);
  });

  it.each(['visible', 'online'] as const)(
    'catches up at once when the page becomes %s',
    (event) => {
      const { last, env, seen } = follow();
      last().send('message', change(11));
      const asleep = last();
      env.page(event);
      expect(asleep.closed).toBe(true);
      expect(last().url).toMatch(/after=11$/);
      last().send('message', change(12));
      expect(seen).toEqual([11, 12]);
    },
  );

  it('does not wait out its rest when the network is back', () => {
    const { last, env, world } = follow();
    for (let i = 0; i < 6; i += 1) {
      last().send('error');
      world.clock.advance(60_000 - 1);
    }
    last().send('error');
    const before = env.streams.length;
    env.page('online');
    expect(env.streams).toHaveLength(before + 1);
    world.clock.advance(39_999);
    expect(env.streams).toHaveLength(before + 1);
  });

  it('lets go of its connection while the page is hidden, whatever the network does', () => {
    const { last, env, world } = follow();
    env.page('hidden');
    expect(last().closed).toBe(true);
    env.page('online');
    world.clock.advance(600_000);
    expect(env.streams).toHaveLength(1);
    env.page('visible');
    expect(env.streams).toHaveLength(2);
  });

  it('takes nothing from a connection it has given up', () => {
    const { last, env, seen } = follow();
    const old = last();
    env.page('online');
    old.send('message', change(11));
    old.send('error');
    expect(seen).toEqual([]);
    expect(last().closed).toBe(false);
  });

  it.each(['<html>', 'null', '{}', '{"seq":"11"}'])(
    'does not step over %j, but asks again',
    (data) => {
      const { last, world, seen } = follow();
      last().send('message', data);
      expect(last().closed).toBe(true);
      world.clock.advance(1000);
      expect(last().url).toMatch(/after=10$/);
      last().send('message', change(11));
      expect(seen).toEqual([11]);
    },
  );

  it('says when it is live and when it is not', () => {
    const { last, onState, world } = follow();
    expect(onState).not.toHaveBeenCalled();
    last().send('beat');
    last().send('beat');
    last().send('error');
    world.clock.advance(1000);
    last().send('message', change(11));
    world.clock.advance(40_000);
    expect(onState.mock.calls.flat()).toEqual([true, false, true, false]);
  });

  it('is over when it is stopped', () => {
    const { last, env, world, stop, seen } = follow();
    stop();
    expect(last().closed).toBe(true);
    last().send('message', change(11));
    env.page('visible');
    world.clock.advance(600_000);
    expect(seen).toEqual([]);
    expect(env.streams).toHaveLength(1);
  });
});
