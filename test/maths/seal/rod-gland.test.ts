import { describe, expect, it } from 'vitest';
import { rodGland, type RodGland } from '@/lib/maths/seal/rod-gland';

// Round figures made up so that every step is done by hand; the definitions are those of the trade.
const rod: RodGland = {
  rodMm: 20,
  glandBoreMm: 20.2,
  grooveBottomMm: 26,
  grooveWidthMm: 5,
  ringInsideMm: 19,
  ringSectionMm: 4,
};

describe('rodGland', () => {
  it('counts squeeze from the rod, and the outside against the groove bottom', () => {
    const found = rodGland(rod);
    expect(found.depthMm).toBe(3);
    expect(found.radialGapMm).toBeCloseTo(0.1, 12);
    expect(found.squeezePercent).toBe(25);
    expect(found.stretchOnRodPercent).toBeCloseTo(100 / 19, 10);
    // Ring outside 27, groove bottom 26.
    expect(found.outsideCompressionPercent).toBeCloseTo(100 / 27, 10);
    expect(found.fillPercent).toBeCloseTo((400 * Math.PI) / 15, 10);
    expect(rodGland({ ...rod, ringSectionMm: 2.9 }).faults[0]!.kind).toBe('no-squeeze');
  });

  it.each([
    ['rod-gland/length', { rodMm: -1 }],
    ['rod-gland/order', { rodMm: 20.2 }],
    ['rod-gland/order', { grooveBottomMm: 20.2 }],
  ])('refuses by %s', (code, part) => {
    expect(() => rodGland({ ...rod, ...part })).toThrow(expect.objectContaining({ code }));
  });
});
