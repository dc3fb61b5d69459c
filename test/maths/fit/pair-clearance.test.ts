import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pairClearance } from '@/lib/maths/fit/pair-clearance';

const um = 1_000_000;
const fit = { minPm: 7 * um, aimPm: 10 * um, maxPm: 13 * um };
const pair = (boreUm: number, shaftUm: number, uPm = 0) =>
  pairClearance({
    bore: { sizePm: (18_000 + boreUm) * um, uPm },
    shaft: { sizePm: (18_000 + shaftUm) * um, uPm },
    fit,
  });

describe('pairClearance', () => {
  it('is bore less shaft, exact to the picometre', () => {
    const found = pairClearance({
      bore: { sizePm: 18_008_000_001, uPm: 0 },
      shaft: { sizePm: 17_998_000_000, uPm: 0 },
      fit,
    });
    expect(found.clearancePm).toBe(10_000_001);
    expect(found.probabilityInside).toBe(1);
    expect(found.verdict).toEqual({ kind: 'inside' });
  });

  it('is below zero for an interference', () => {
    const found = pair(0, 5);
    expect(found.clearancePm).toBe(-5 * um);
    expect(found.verdict).toEqual({ kind: 'out', side: 'small', byPm: 12 * um });
    expect(found.probabilityInside).toBe(0);
  });

  it('carries both uncertainties into the guard and the probability', () => {
    // Each 1 um: u = 1.414214 um, guard 2.3335 um; the clearance 8 um is unsure of 7.
    const found = pair(8, 0, um);
    expect(found.uPm).toBeCloseTo(1_414_213.56, 1);
    expect(found.guardPm).toBe(2_333_454);
    expect(found.verdict).toEqual({ kind: 'unsure', side: 'bottom' });
    // PHI(5/sqrt 2) - PHI(-1/sqrt 2) from a normal table: 0.999797 - 0.239750 = 0.760047.
    expect(found.probabilityInside).toBeCloseTo(0.760047, 5);
  });

  it('makes a conforming verdict at least 95 % sure', () => {
    // ISO 14253-1: 1.65 u inside one limit is PHI(1.65) = 0.9505; the far limit may take some away
    // only where the band is under about 3.3 u wide, and then there is no conforming zone.
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 20 }), fc.integer({ min: 1, max: 1200 }), (c, nm) => {
        const found = pair(c, 0, nm * 1000);
        if (found.verdict.kind === 'inside' || found.verdict.kind === 'near') {
          const twoSided = 1 - 2 * 0.0495;
          expect(found.probabilityInside).toBeGreaterThan(twoSided);
        }
        if (found.verdict.kind === 'out') expect(found.probabilityInside).toBeLessThan(0.05);
      }),
    );
  });

  it.each([
    ['pair-clearance/size', { bore: { sizePm: 1.5, uPm: 0 } }],
    ['pair-clearance/size', { shaft: { sizePm: 0, uPm: 0 } }],
    ['pair-clearance/uncertainty', { shaft: { sizePm: 1, uPm: -1 } }],
    ['pair-clearance/fit', { fit: { minPm: 1, aimPm: 0, maxPm: 2 } }],
    ['pair-clearance/fit', { fit: { minPm: 1, aimPm: 1, maxPm: 1 } }],
    ['pair-clearance/fit', { fit: { minPm: 0, aimPm: 0.5, maxPm: 1 } }],
  ])('refuses by %s', (code, part) => {
    const good = { bore: { sizePm: 10, uPm: 0 }, shaft: { sizePm: 5, uPm: 0 }, fit };
    expect(() => pairClearance({ ...good, ...part })).toThrow(expect.objectContaining({ code }));
  });
});
