import { describe, expect, it } from 'vitest';
import { withTimeout } from '@/lib/outbox/with-timeout';
import { createClock } from './clock';

const late = () => new Error('late');

describe('withTimeout', () => {
  it('brings what comes in time, or its failure, and leaves no timer behind', async () => {
    const clock = createClock(0);
    expect(await withTimeout(clock, 100, Promise.resolve(7), late)).toBe(7);
    const failing = withTimeout(clock, 100, Promise.reject(new Error('own')), late);
    await expect(failing).rejects.toThrow('own');
    expect(clock.waiting()).toEqual([]);
  });

  it('throws what it is given when nothing comes in time', async () => {
    const clock = createClock(0);
    const waiting = withTimeout(clock, 100, new Promise(() => undefined), late);
    clock.advance(100);
    await expect(waiting).rejects.toThrow('late');
  });
});
