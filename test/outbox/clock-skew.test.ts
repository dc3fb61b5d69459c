import { describe, expect, it } from 'vitest';
import { clockSkewMs } from '@/lib/outbox/clock-skew';

const noon = Date.UTC(2026, 10, 25, 12);
const exchange = {
  sentMs: noon - 100,
  answeredMs: noon + 100,
  dateHeader: null as string | null,
  receivedAt: [] as string[],
};

describe('clockSkewMs', () => {
  it('is above zero when the device is ahead of the server', () => {
    const receivedAt = ['2026-11-25T11:00:00.000Z'];
    expect(clockSkewMs({ ...exchange, receivedAt })).toBe(3_600_000);
  });

  it('takes the latest row of the answer, which is nearest to the answer', () => {
    const receivedAt = ['2026-11-25T11:59:50.000Z', '2026-11-25T12:00:00.000Z'];
    expect(clockSkewMs({ ...exchange, receivedAt })).toBe(0);
  });

  it('falls back on the Date header, which has lost half a second on average', () => {
    const dateHeader = 'Wed, 25 Nov 2026 12:00:05 GMT';
    expect(clockSkewMs({ ...exchange, dateHeader })).toBe(-5500);
  });

  it.each([
    ['the answer names no time', exchange],
    ['the header is no time', { ...exchange, dateHeader: 'soon' }],
    ['a row has no time', { ...exchange, receivedAt: ['soon'] }],
    ['the device slept in between', { ...exchange, answeredMs: noon + 3_600_000 }],
    ['the clock was put back in between', { ...exchange, answeredMs: noon - 3_600_000 }],
  ])('says nothing when %s', (_, given) => {
    const dateHeader = given === exchange ? null : (given.dateHeader ?? null);
    const receivedAt =
      given.answeredMs === exchange.answeredMs ? given.receivedAt : ['2026-11-25T12:00:00.000Z'];
    expect(clockSkewMs({ ...given, dateHeader, receivedAt })).toBeNull();
  });
});
