import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { designPistonGland } from '@/lib/maths/seal/design-piston-gland';
import { pistonGland } from '@/lib/maths/seal/piston-gland';

describe('designPistonGland', () => {
  it('makes a gland that has the wanted squeeze and fill', () => {
    const percent = fc.double({ min: 5, max: 30, noNaN: true });
    fc.assert(
      fc.property(percent, fc.double({ min: 50, max: 100, noNaN: true }), (squeeze, fill) => {
        const ring = { boreMm: 50, ringInsideMm: 43, ringSectionMm: 3.53 };
        const made = designPistonGland({ ...ring, squeezePercent: squeeze, fillPercent: fill });
        const { grooveBottomMm, grooveWidthMm } = made;
        const found = pistonGland({ ...ring, pistonMm: 49.9, grooveBottomMm, grooveWidthMm });
        expect(found.squeezePercent).toBeCloseTo(squeeze, 9);
        expect(found.fillPercent).toBeCloseTo(fill, 9);
        expect(found.stretchPercent).toBeCloseTo(made.stretchPercent, 9);
        expect(found.depthMm).toBeCloseTo(made.depthMm, 12);
      }),
    );
  });

  it('takes no squeeze and a full groove as they are', () => {
    const ring = { boreMm: 50, ringInsideMm: 43, ringSectionMm: 4 };
    const made = designPistonGland({ ...ring, squeezePercent: 0, fillPercent: 100 });
    expect(made.depthMm).toBe(4);
    expect(made.grooveWidthMm).toBeCloseTo(Math.PI, 12);
    const loose = designPistonGland({ ...ring, squeezePercent: 0, fillPercent: 0.5 });
    expect(loose.grooveWidthMm).toBeCloseTo(200 * Math.PI, 9);
  });

  it.each([
    ['design-piston-gland/wanted', { squeezePercent: 100 }],
    ['design-piston-gland/wanted', { squeezePercent: -1 }],
    ['design-piston-gland/wanted', { fillPercent: 0 }],
    ['design-piston-gland/wanted', { fillPercent: 101 }],
    ['design-piston-gland/length', { boreMm: 5 }],
    ['design-piston-gland/length', { ringSectionMm: NaN }],
  ])('refuses by %s', (code, part) => {
    const ring = { boreMm: 50, ringInsideMm: 43, ringSectionMm: 3.53 };
    const wanted = { ...ring, squeezePercent: 14, fillPercent: 75 };
    expect(() => designPistonGland({ ...wanted, ...part })).toThrow(
      expect.objectContaining({ code }),
    );
  });
});
