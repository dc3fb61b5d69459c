import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clearanceAtTemperatures } from '@/lib/maths/thermal/clearance-at-temperatures';
import { heatOnePiece } from '@/lib/maths/thermal/heat-one-piece';

// Coefficients are made up of usual size; nothing is said of a material.
const steel = 11.5e-6;
const light = 23.1e-6;

describe('heatOnePiece', () => {
  const bore = { size20Mm: 50, expansionPerC: steel };
  const shaft = { size20Mm: 50.045, expansionPerC: light };

  it('leaves the working gap at the temperature it gives, for hub and shaft alike', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('bore' as const, 'shaft' as const),
        fc.double({ min: 0, max: 0.05, noNaN: true }),
        fc.double({ min: -10, max: 40, noNaN: true }),
        (change, gapMm, otherC) => {
          const found = heatOnePiece({ change, bore, shaft, gapMm, otherC });
          if (found.kind !== 'found') throw new Error('it would pass absolute zero');
          const [boreC, shaftC] =
            change === 'bore' ? [found.temperatureC, otherC] : [otherC, found.temperatureC];
          const there = clearanceAtTemperatures({ bore, boreC, shaft, shaftC });
          expect(there.clearanceMm).toBeCloseTo(gapMm, 10);
          expect(found.changeC).toBeCloseTo(found.temperatureC - otherC, 10);
          expect(found.changeC > 0).toBe(change === 'bore');
        },
      ),
    );
  });

  it('does not cool past absolute zero', () => {
    const thick = { ...shaft, size20Mm: 50.5 };
    const question = { change: 'shaft', bore, shaft: thick, gapMm: 0, otherC: 20 } as const;
    expect(heatOnePiece(question)).toEqual({ kind: 'never-so-cold' });
  });

  it.each([
    ['heat-one-piece/length', { shaft: { size20Mm: -1, expansionPerC: steel } }],
    ['heat-one-piece/expansion', { bore: { size20Mm: 50, expansionPerC: 0 } }],
    ['heat-one-piece/temperature', { otherC: -400 }],
    ['heat-one-piece/gap', { gapMm: -0.01 }],
  ])('refuses by %s', (code, part) => {
    const good = { change: 'bore', bore, shaft, gapMm: 0.03, otherC: 20 } as const;
    expect(() => heatOnePiece({ ...good, ...part })).toThrow(expect.objectContaining({ code }));
  });
});
