import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pistonGland, type PistonGland } from '@/lib/maths/seal/piston-gland';
import { pistonGlandRange } from '@/lib/maths/seal/piston-gland-range';

// Round figures made up so that every step is done by hand; the definitions are those of the trade.
const piston: PistonGland = {
  boreMm: 50,
  pistonMm: 49.8,
  grooveBottomMm: 44,
  grooveWidthMm: 5,
  ringInsideMm: 43,
  ringSectionMm: 4,
};

describe('pistonGlandRange', () => {
  const range = (leastMm: number, mostMm: number) => ({ leastMm, mostMm });
  const sizes = {
    bore: range(50, 50.04),
    grooveBottom: range(44.1, 44.2),
    ringSection: range(3.4, 3.6),
    grooveWidth: range(4.7, 4.9),
  };

  it('holds every gland within its limits, and no more', () => {
    const part = fc.double({ min: 0, max: 1, noNaN: true });
    const ends = pistonGlandRange(sizes);
    fc.assert(
      fc.property(part, part, part, part, (a, b, c, d) => {
        const at = ({ leastMm, mostMm }: { leastMm: number; mostMm: number }, p: number) =>
          leastMm + p * (mostMm - leastMm);
        const one = pistonGland({
          ...piston,
          boreMm: at(sizes.bore, a),
          grooveBottomMm: at(sizes.grooveBottom, b),
          ringSectionMm: at(sizes.ringSection, c),
          grooveWidthMm: at(sizes.grooveWidth, d),
        });
        expect(one.squeezePercent).toBeGreaterThanOrEqual(ends.squeezePercent.least - 1e-9);
        expect(one.squeezePercent).toBeLessThanOrEqual(ends.squeezePercent.most + 1e-9);
        expect(one.fillPercent).toBeGreaterThanOrEqual(ends.fillPercent.least - 1e-9);
        expect(one.fillPercent).toBeLessThanOrEqual(ends.fillPercent.most + 1e-9);
      }),
    );
    // The corners themselves, by hand: t from 2.9 to 2.97.
    expect(ends.squeezePercent.least).toBeCloseTo(100 * (1 - 2.97 / 3.4), 9);
    expect(ends.squeezePercent.most).toBeCloseTo(100 * (1 - 2.9 / 3.6), 9);
    expect(ends.fillPercent.most).toBeCloseTo((100 * Math.PI * 3.6 ** 2) / 4 / (2.9 * 4.7), 9);
  });

  it('has no range where every size is known', () => {
    const one = pistonGlandRange({
      bore: range(50, 50),
      grooveBottom: range(44, 44),
      ringSection: range(4, 4),
      grooveWidth: range(5, 5),
    });
    expect(one.squeezePercent).toEqual({ least: 25, most: 25 });
  });

  it.each([
    ['piston-gland-range/range', { bore: range(50.04, 50) }],
    ['piston-gland-range/length', { ringSection: range(0, 3) }],
    ['piston-gland-range/length', { grooveBottom: range(44, 50) }],
  ])('refuses by %s', (code, part) => {
    expect(() => pistonGlandRange({ ...sizes, ...part })).toThrow(
      expect.objectContaining({ code }),
    );
  });
});
