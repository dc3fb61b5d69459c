import { describe, expect, it } from 'vitest';
import { faceGland } from '@/lib/maths/seal/face-gland';

describe('faceGland', () => {
  it('is squeezed least by the deepest groove and the thinnest ring', () => {
    const found = faceGland({
      depthMm: 3,
      grooveWidthMm: 5,
      ringSectionMm: 4,
      depthHalfToleranceMm: 0.2,
      sectionHalfToleranceMm: 0.1,
    });
    expect(found.squeezePercent).toBe(25);
    expect(found.squeezeRangePercent.least).toBeCloseTo(100 * (1 - 3.2 / 3.9), 10);
    expect(found.squeezeRangePercent.most).toBeCloseTo(100 * (1 - 2.8 / 4.1), 10);
    expect(found.fillPercent).toBeCloseTo((400 * Math.PI) / 15, 10);
  });

  it('has no range without tolerances', () => {
    const { squeezeRangePercent } = faceGland({ depthMm: 3, grooveWidthMm: 5, ringSectionMm: 4 });
    expect(squeezeRangePercent).toEqual({ least: 25, most: 25 });
  });

  it.each([{ depthMm: 0 }, { depthHalfToleranceMm: 3 }, { sectionHalfToleranceMm: 4 }])(
    'refuses %o',
    (part) => {
      const gland = { depthMm: 3, grooveWidthMm: 5, ringSectionMm: 4, ...part };
      expect(() => faceGland(gland)).toThrow(
        expect.objectContaining({ code: 'face-gland/length' }),
      );
    },
  );
});
