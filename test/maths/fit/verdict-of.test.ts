import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { verdictOf } from '@/lib/maths/fit/verdict-of';

const limits = { lowerPm: 17_992_000_000, upperPm: 18_000_000_000 };
const um = 1_000_000;
const kindAt = (fromUpperUm: number, guardUm: number) =>
  verdictOf(limits.upperPm + fromUpperUm * um, limits, guardUm * um);

describe('verdictOf', () => {
  // A band of 8 um, so an eighth is 1 um; every line of the rule, one picometre on either side.
  it('is unsure within the guard of a limit, on both sides of it', () => {
    expect(kindAt(2, 2)).toEqual({ kind: 'unsure', side: 'top' });
    expect(kindAt(-1.999999, 2)).toEqual({ kind: 'unsure', side: 'top' });
    expect(kindAt(-6.000001, 2)).toEqual({ kind: 'unsure', side: 'bottom' });
    expect(kindAt(-10, 2)).toEqual({ kind: 'unsure', side: 'bottom' });
  });

  it('is out beyond the guard, with the amount beyond the limit itself', () => {
    expect(kindAt(2.000001, 2)).toEqual({ kind: 'out', side: 'large', byPm: 2_000_001 });
    expect(kindAt(-10.000001, 2)).toEqual({ kind: 'out', side: 'small', byPm: 2_000_001 });
  });

  it('conforms on the line of the guard itself', () => {
    expect(kindAt(-2, 2)).toEqual({ kind: 'inside' });
    expect(kindAt(-6, 2)).toEqual({ kind: 'inside' });
  });

  it('is near within an eighth of the band, the line counted in', () => {
    expect(kindAt(-1, 0)).toEqual({ kind: 'near', side: 'top' });
    expect(kindAt(-1.000001, 0)).toEqual({ kind: 'inside' });
    expect(kindAt(-7, 0)).toEqual({ kind: 'near', side: 'bottom' });
    expect(kindAt(-6.999999, 0)).toEqual({ kind: 'inside' });
    expect(kindAt(0, 0)).toEqual({ kind: 'near', side: 'top' });
  });

  it('is never near while the guard is wider than an eighth', () => {
    expect(kindAt(-1.5, 1.5)).toEqual({ kind: 'inside' });
    expect(kindAt(-1, 1.5)).toEqual({ kind: 'unsure', side: 'top' });
  });

  it('can prove nothing where the guards meet, and names the nearer limit', () => {
    expect(kindAt(-4, 5)).toEqual({ kind: 'unsure', side: 'top' });
    expect(kindAt(-5, 5)).toEqual({ kind: 'unsure', side: 'bottom' });
  });

  it('takes a single limit, with nothing near it', () => {
    expect(verdictOf(5, { lowerPm: 5 }, 0)).toEqual({ kind: 'inside' });
    expect(verdictOf(4, { lowerPm: 5 }, 0)).toEqual({ kind: 'out', side: 'small', byPm: 1 });
    expect(verdictOf(4, { lowerPm: 5 }, 1)).toEqual({ kind: 'unsure', side: 'bottom' });
    expect(verdictOf(6, { upperPm: 5 }, 0)).toEqual({ kind: 'out', side: 'large', byPm: 1 });
    expect(verdictOf(5, { upperPm: 5 }, 1)).toEqual({ kind: 'unsure', side: 'top' });
  });

  it('mirrors top and bottom', () => {
    const pm = fc.integer({ min: -60, max: 60 });
    fc.assert(
      fc.property(pm, fc.integer({ min: 0, max: 25 }), (valuePm, guardPm) => {
        const band = { lowerPm: -32, upperPm: 32 };
        const [plain, turned] = [
          verdictOf(valuePm, band, guardPm),
          verdictOf(0 - valuePm, band, guardPm),
        ];
        expect(turned.kind).toBe(plain.kind);
        if (valuePm === 0 || !('side' in plain) || !('side' in turned)) return;
        expect(turned.side).not.toBe(plain.side);
      }),
    );
  });

  it.each([
    ['verdict-of/picometres', [1.5, { upperPm: 2 }, 0]],
    ['verdict-of/picometres', [1, { upperPm: NaN }, 0]],
    ['verdict-of/limits', [1, {}, 0]],
    ['verdict-of/limits', [1, { lowerPm: 2, upperPm: 2 }, 0]],
    ['verdict-of/guard', [1, { upperPm: 2 }, -1]],
    ['verdict-of/guard', [1, { upperPm: 2 }, 0.5]],
  ] as const)('refuses by %s', (code, [valuePm, odd, guardPm]) => {
    expect(() => verdictOf(valuePm, odd, guardPm)).toThrow(expect.objectContaining({ code }));
  });
});
