import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clearanceAtTemperatures } from '@/lib/maths/thermal/clearance-at-temperatures';
import { tightestMoment } from '@/lib/maths/thermal/tightest-moment';

// Coefficients are made up of usual size; nothing is said of a material.
const steel = 11.5e-6;
const light = 23.1e-6;
const sizes = fc.double({ min: 5, max: 300, noNaN: true });
const expansions = fc.double({ min: 1e-6, max: 3e-5, noNaN: true });

describe('tightestMoment', () => {
  it('is the bore cold with the shaft hot, unless a piece shrinks with heat', () => {
    const ranges = {
      boreRange: { lowestC: 5, highestC: 90 },
      shaftRange: { lowestC: 10, highestC: 140 },
    };
    const bore = { size20Mm: 40.012, expansionPerC: steel };
    const shaft = { size20Mm: 39.93, expansionPerC: light };
    expect(tightestMoment({ bore, shaft, ...ranges })).toMatchObject({ boreC: 5, shaftC: 140 });
    const odd = { ...bore, expansionPerC: -1e-6 };
    expect(tightestMoment({ bore: odd, shaft, ...ranges }).boreC).toBe(90);
    const oddShaft = { ...shaft, expansionPerC: -1e-6 };
    expect(tightestMoment({ bore, shaft: oddShaft, ...ranges }).shaftC).toBe(10);
  });

  it('is never slacker than any moment within the ranges', () => {
    const parts = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(sizes, expansions, expansions, parts, parts, (size, aBore, aShaft, p, q) => {
        const bore = { size20Mm: size, expansionPerC: aBore };
        const shaft = { size20Mm: size - 0.03, expansionPerC: aShaft };
        const range = { lowestC: -20, highestC: 150 };
        const worst = tightestMoment({ bore, boreRange: range, shaft, shaftRange: range });
        const moment = clearanceAtTemperatures({
          bore,
          boreC: -20 + 170 * p,
          shaft,
          shaftC: -20 + 170 * q,
        });
        expect(worst.clearanceMm).toBeLessThanOrEqual(moment.clearanceMm + 1e-12);
      }),
    );
  });

  it('refuses a range upside down', () => {
    const piece = { size20Mm: 10, expansionPerC: steel };
    const range = { lowestC: 10, highestC: 20 };
    const upsideDown = { lowestC: 20, highestC: 10 };
    expect(() =>
      tightestMoment({ bore: piece, boreRange: range, shaft: piece, shaftRange: upsideDown }),
    ).toThrow(expect.objectContaining({ code: 'tightest-moment/range' }));
  });
});
