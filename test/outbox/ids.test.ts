import { describe, expect, it } from 'vitest';
import { createIds, uuidv7 } from '@/lib/outbox/ids';

const hexOf = (text: string) => Uint8Array.from(text.match(/../g)!, (pair) => parseInt(pair, 16));

describe('uuidv7', () => {
  it('makes the example of RFC 9562, appendix A.6, from its time and its random bits', () => {
    // RFC 9562, A.6: Tuesday 22 February 2022 14:22:22.00 GMT-05:00, rand_a 0xCC3, rand_b 0b01 8C4DC0C0C07398F.
    const random = hexOf('0000000000000cc398c4dc0c0c07398f');
    const make = createIds({
      nowMs: () => Date.parse('2022-02-22T14:22:22.00-05:00'),
      randomise: (bytes) => bytes.set(random),
    });
    expect(make().toUpperCase()).toBe('017F22E2-79B0-7CC3-98C4-DC0C0C07398F');
  });

  it('sets version 7 and the variant whatever the random bits are', () => {
    for (const byte of [0x00, 0xff]) {
      const make = createIds({ nowMs: () => 5, randomise: (bytes) => bytes.fill(byte) });
      expect(make()).toMatch(/^00000000-0005-7[\da-f]{3}-[89ab][\da-f]{3}-[\da-f]{12}$/);
    }
  });

  it('rises strictly within one millisecond, past the end of its counter too', () => {
    const make = createIds({ nowMs: () => 1_700_000_000_000, randomise: (b) => b.fill(0xff) });
    const ids = Array.from({ length: 10_000 }, make);
    expect([...ids].sort()).toEqual(ids);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('goes on rising when the clock is put back by a second', () => {
    let nowMs = 1_700_000_000_000;
    const make = createIds({ nowMs: () => nowMs, randomise: (bytes) => bytes.fill(0) });
    const before = make();
    nowMs -= 1000;
    expect(make() > before).toBe(true);
  });

  it('does not stay in 2099 when the clock was there once', () => {
    let nowMs = Date.UTC(2099, 0, 1);
    const make = createIds({ nowMs: () => nowMs, randomise: (bytes) => bytes.fill(0) });
    make();
    nowMs = Date.UTC(2026, 0, 1);
    expect(parseInt(make().replaceAll('-', '').slice(0, 12), 16)).toBe(nowMs);
  });

  it('needs neither randomUUID nor a secure page, only getRandomValues', () => {
    const asked = crypto.randomUUID;
    Object.defineProperty(crypto, 'randomUUID', { value: undefined, configurable: true });
    try {
      expect(uuidv7()).toMatch(/^[\da-f]{8}-[\da-f]{4}-7/);
      expect(uuidv7()).not.toBe(uuidv7());
    } finally {
      Object.defineProperty(crypto, 'randomUUID', { value: asked, configurable: true });
    }
  });
});
