import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { commonFormulas } from '@/lib/maths/derived/common-formulas';
import { parseFormula } from '@/lib/maths/derived/formula';

describe('commonFormulas', () => {
  const work = (key: string, known: Record<string, number>) => {
    const { names, evaluate } = parseFormula(
      commonFormulas.find((one) => one.key === key)!.formula,
    );
    return evaluate(names.map((name) => known[name]!));
  };

  it('explains every name of every formula and no other', () => {
    for (const { formula, names } of commonFormulas) {
      expect(Object.keys(names).sort(), formula).toEqual(parseFormula(formula).names.sort());
    }
  });

  // Each is turned round: the figure is built from the answer by plain geometry.
  const size = fc.double({ min: 1, max: 50, noNaN: true });
  const angle = fc.double({ min: 20, max: 80, noNaN: true });
  const radians = (deg: number) => (deg * Math.PI) / 180;

  it('finds a radius from chord and height', () => {
    fc.assert(
      fc.property(size, fc.double({ min: 0.1, max: 1.5, noNaN: true }), (r, half) => {
        const [c, h] = [2 * r * Math.sin(half), r * (1 - Math.cos(half))];
        expect(work('radius-from-chord', { c, h }) / r).toBeCloseTo(1, 9);
      }),
    );
  });

  it('finds angles of sine bar, taper and taper over rollers', () => {
    fc.assert(
      fc.property(size, angle, (L, deg) => {
        expect(work('sine-bar-angle', { h: L * Math.sin(radians(deg)), L })).toBeCloseTo(deg, 8);
        const growth = 2 * L * Math.tan(radians(deg / 2));
        expect(work('included-taper', { D: 10 + growth, d: 10, L })).toBeCloseTo(deg, 8);
        const rollers = { M1: 30, M2: 30 + growth, h: L };
        expect(work('taper-over-rollers', rollers)).toBeCloseTo(deg, 8);
      }),
    );
  });

  it('finds the root corner of a male dovetail from rollers in its corners', () => {
    fc.assert(
      fc.property(size, size, angle, (width, d, a) => {
        // A roller of diameter d in a corner of angle a: its centre lies d/2 / tan(a/2) outside the
        // corner, its far side half a diameter more.
        const M = width + 2 * (d / 2 / Math.tan(radians(a / 2)) + d / 2);
        expect(work('male-dovetail', { M, d, a })).toBeCloseTo(width, 9);
      }),
    );
  });

  it('finds a pitch circle from the chord and a bore from two balls', () => {
    fc.assert(
      fc.property(size, fc.integer({ min: 2, max: 12 }), (D, n) => {
        // Neighbouring holes at angles 0 and 360/n on a circle of diameter D.
        const c = Math.hypot(
          (D / 2) * (1 - Math.cos(radians(360 / n))),
          (D / 2) * Math.sin(radians(360 / n)),
        );
        expect(work('pitch-circle', { c, n }) / D).toBeCloseTo(1, 9);
      }),
    );
    fc.assert(
      fc.property(size, fc.double({ min: 1.05, max: 1.95, noNaN: true }), (d, part) => {
        // The upper ball rests on the lower: centres d apart, bore - d of it sideways.
        const bore = d * part;
        const h = d + Math.sqrt(d * d - (bore - d) ** 2);
        expect(work('bore-from-two-balls', { d, h }) / bore).toBeCloseTo(1, 6);
      }),
    );
  });

  it('finds grooves, walls, centres and positions', () => {
    expect(work('centred-groove', { L: 42, w: 5 })).toBe(18.5);
    expect(work('wall', { D: 38, d: 30 })).toBe(4);
    expect(work('centres-over-pins', { s: 86, d1: 12, d2: 16 })).toBe(72);
    expect(work('from-unfinished-face', { p: 7.25, s: 0.5 })).toBe(7.75);
  });
});
