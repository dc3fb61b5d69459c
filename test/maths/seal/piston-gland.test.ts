import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pistonGland, type PistonGland } from '@/lib/maths/seal/piston-gland';

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
