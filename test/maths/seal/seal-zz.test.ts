import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { designPistonGland } from '@/lib/maths/seal/design-piston-gland';
import { faceGland } from '@/lib/maths/seal/face-gland';
import { pistonGland, type PistonGland } from '@/lib/maths/seal/piston-gland';
import { pistonGlandRange } from '@/lib/maths/seal/piston-gland-range';
import { rodGland, type RodGland } from '@/lib/maths/seal/rod-gland';
import { softPacking } from '@/lib/maths/seal/soft-packing';

// Round figures made up so that every step is done by hand; the definitions are those of the trade.
const piston: PistonGland = {
  boreMm: 50,
  pistonMm: 49.8,
  grooveBottomMm: 44,
  grooveWidthMm: 5,
  ringInsideMm: 43,
  ringSectionMm: 4,
};

describe('pistonGland', () => {
  it('counts squeeze to the bore, stretch on the ring inside and fill on the loose ring', () => {
    const found = pistonGland(piston);
    expect(found.depthMm).toBe(3);
    expect(found.grooveDepthMm).toBeCloseTo(2.9, 12);
    expect(found.radialGapMm).toBeCloseTo(0.1, 12);
    expect(found.squeezePercent).toBe(25);
    expect(found.squeezeEccentricPercent.least).toBeCloseTo(22.5, 10);
    expect(found.squeezeEccentricPercent.most).toBeCloseTo(27.5, 10);
    expect(found.stretchPercent).toBeCloseTo(100 / 43, 10);
    expect(found.ringAreaMm2).toBeCloseTo(4 * Math.PI, 12);
    expect(found.glandAreaMm2).toBe(15);
    expect(found.fillPercent).toBeCloseTo((400 * Math.PI) / 15, 10);
    expect(found.faults).toEqual([]);
  });

  it('keeps the volume of the ring when it is stretched or pushed together', () => {
    const inside = fc.double({ min: 5, max: 60, noNaN: true });
    fc.assert(
      fc.property(inside, fc.double({ min: 1, max: 8, noNaN: true }), (ringInsideMm, section) => {
        const gland = { ...piston, ringInsideMm, ringSectionMm: section };
        const { stretchedSectionMm: w } = pistonGland(gland);
        const volume = (over: number, thick: number) => thick * thick * (over + thick);
        expect(volume(44, w) / volume(ringInsideMm, section)).toBeCloseTo(1, 12);
        expect(w < section).toBe(ringInsideMm < 44);
      }),
    );
  });

  it('changes nothing of a ring that is not stretched', () => {
    const found = pistonGland({ ...piston, ringInsideMm: 44 });
    expect(found.stretchPercent).toBe(0);
    expect(found.stretchedSectionMm).toBeCloseTo(4, 12);
    expect(found.squeezeStretchedPercent).toBeCloseTo(found.squeezePercent, 10);
  });

  it('says that a deep gland squeezes nothing and a small one is overfull', () => {
    expect(pistonGland({ ...piston, ringSectionMm: 3 }).faults).toEqual([
      { kind: 'no-squeeze', gapMm: 0 },
    ]);
    const narrow = pistonGland({ ...piston, grooveWidthMm: 4 });
    expect(narrow.faults).toEqual([{ kind: 'overfull', fillPercent: narrow.fillPercent }]);
  });

  it.each([
    ['piston-gland/length', { ringSectionMm: 0 }],
    ['piston-gland/length', { boreMm: Infinity }],
    ['piston-gland/order', { pistonMm: 50 }],
    ['piston-gland/order', { grooveBottomMm: 49.8 }],
  ])('refuses by %s', (code, part) => {
    expect(() => pistonGland({ ...piston, ...part })).toThrow(expect.objectContaining({ code }));
  });
});

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

describe('softPacking', () => {
  const box = { rodMm: 16, boxBoreMm: 28, boxDepthMm: 36, rings: 5, compressionPercent: 15 };

  it('cuts rings to the mean round of the box', () => {
    // By hand: section 6, mean diameter 22, five rings 30 high, 25.5 pulled up, 6 of entry left.
    const found = softPacking(box);
    expect(found.sectionMm).toBe(6);
    expect(found.cutLengthMm).toBeCloseTo(22 * Math.PI, 12);
    expect(found.stackMm).toBe(30);
    expect(found.stackCompressedMm).toBe(25.5);
    expect(found.glandEntryLeftMm).toBe(6);
    expect(softPacking({ ...box, rings: 7 }).glandEntryLeftMm).toBe(-6);
  });

  it.each([
    ['soft-packing/length', { rodMm: 0 }],
    ['soft-packing/order', { boxBoreMm: 16 }],
    ['soft-packing/rings', { rings: 2.5 }],
    ['soft-packing/rings', { rings: 0 }],
    ['soft-packing/compression', { compressionPercent: 100 }],
    ['soft-packing/compression', { compressionPercent: -1 }],
  ])('refuses by %s', (code, part) => {
    expect(() => softPacking({ ...box, ...part })).toThrow(expect.objectContaining({ code }));
  });
});
