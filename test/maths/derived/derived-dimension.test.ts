import { describe, expect, it } from 'vitest';
import { derivedDimension } from '@/lib/maths/derived/derived-dimension';

describe('derivedDimension', () => {
  it('propagates a centred groove by hand', () => {
    // (42.016 - 5.032)/2 = 18.492; u = sqrt(0.001^2 + 0.00075^2) = 0.00125 (JCGM 100, 5.1.2).
    const found = derivedDimension('(L - w)/2', {
      L: { value: 42.016, u: 0.002 },
      w: { value: 5.032, u: 0.0015 },
    });
    expect(found.value).toBeCloseTo(18.492, 12);
    expect(found.u).toBeCloseTo(0.00125, 12);
    expect(found.sensitivities.L).toBeCloseTo(0.5, 9);
    expect(found.sensitivities.w).toBeCloseTo(-0.5, 9);
    expect(found.contributions.w).toBeCloseTo(0.00075, 12);
    // Infinite degrees of freedom: 1.959964 u.
    expect(found.expanded!.U95).toBeCloseTo(1.959964 * 0.00125, 8);
  });

  it('lets a common error of one micrometer fall away in a difference', () => {
    const known = { a: { value: 10, u: 0.002 }, b: { value: 4, u: 0.002 } };
    expect(derivedDimension('a - b', known, [['a', 'b', 1]]).u).toBeCloseTo(0, 10);
    expect(derivedDimension('a - b', known, [['b', 'a', 1]]).u).toBeCloseTo(0, 10);
    expect(derivedDimension('a + b', known, [['a', 'b', 1]]).u).toBeCloseTo(0.004, 10);
    expect(derivedDimension('a - b', known, [['a', 'b', 1]]).expanded).toBeUndefined();
  });

  it('uses the degrees of freedom of the inputs', () => {
    // Wall (D - d)/2 with 9 and 4: 0.00125^4 / (0.00075^4/9 + 0.001^4/4) = 8.5616 (JCGM 100, G.4.1).
    const found = derivedDimension('(D - d)/2', {
      D: { value: 38.012, u: 0.0015, degrees: 9 },
      d: { value: 29.984, u: 0.002, degrees: 4 },
    });
    expect(found.expanded!.degrees).toBeCloseTo(8.5616, 4);
  });

  it('refuses a name without a value and correlations of other names', () => {
    const known = { a: { value: 1, u: 0 } };
    expect(() => derivedDimension('a + b', known)).toThrow(
      expect.objectContaining({ code: 'derived-dimension/unknown' }),
    );
    expect(() => derivedDimension('toString', {})).toThrow(
      expect.objectContaining({ code: 'derived-dimension/unknown' }),
    );
    for (const pair of [
      ['a', 'z', 1],
      ['a', 'a', 1],
    ] as const) {
      expect(() => derivedDimension('2 a', known, [pair])).toThrow(
        expect.objectContaining({ code: 'derived-dimension/correlation' }),
      );
    }
  });

  it('has no expanded figure where nothing is uncertain', () => {
    const found = derivedDimension('2 a', { a: { value: 3, u: 0 } });
    expect(found).toMatchObject({ value: 6, u: 0 });
    expect(found.expanded).toBeUndefined();
  });
});
