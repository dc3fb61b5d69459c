import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { guardPicometres } from '@/lib/maths/fit/guard-picometres';

describe('guardPicometres', () => {
  it('is 1.65 times the combined uncertainty', () => {
    // 0.6 and 0.8 um combine to 1 um; ISO 14253-1:2017, 95 %, one limit in play.
    expect(guardPicometres([600_000, 800_000])).toBe(1_650_000);
    expect(guardPicometres([2_000_000])).toBe(3_300_000);
    expect(guardPicometres([])).toBe(0);
    expect(guardPicometres([0, 0])).toBe(0);
  });

  it('never rounds down, and never up by more than three picometres', () => {
    const u = fc.double({ min: 0, max: 1e8, noNaN: true });
    fc.assert(
      fc.property(u, u, (a, b) => {
        const exact = 1.65 * Math.hypot(a, b);
        expect(guardPicometres([a, b])).toBeGreaterThanOrEqual(exact - 1e-5);
        expect(guardPicometres([a, b])).toBeLessThan(exact + 3);
      }),
    );
  });

  it('refuses an uncertainty below zero', () => {
    expect(() => guardPicometres([1, -1])).toThrow(
      expect.objectContaining({ code: 'guard-picometres/uncertainty' }),
    );
  });
});
