import { describe, expect, it } from 'vitest';
import { backOffMs } from '@/lib/outbox/back-off';

const least = () => 0;
const most = () => 1 - Number.EPSILON;

describe('backOffMs', () => {
  it('doubles from one second and stops at one minute', () => {
    const whole = [1, 2, 3, 4, 5, 6, 7, 8, 2000].map((n) => Math.round(backOffMs(n, most)));
    expect(whole).toEqual([1000, 2000, 4000, 8000, 16_000, 32_000, 60_000, 60_000, 60_000]);
  });

  it('is never less than half of that, so that a dead server is not hammered', () => {
    expect([1, 2, 7, 2000].map((n) => backOffMs(n, least))).toEqual([500, 1000, 30_000, 30_000]);
  });
});
