import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clearanceAtTemperatures } from '@/lib/maths/thermal/clearance-at-temperatures';
import { temperatureForClearance } from '@/lib/maths/thermal/temperature-for-clearance';

// Coefficients are made up of usual size; nothing is said of a material.
const steel = 11.5e-6;
const light = 23.1e-6;
const sizes = fc.double({ min: 5, max: 300, noNaN: true });
const expansions = fc.double({ min: 1e-6, max: 3e-5, noNaN: true });

describe('temperatureForClearance', () => {
  it('agrees with the clearance at the temperature it gives', () => {
    fc.assert(
      fc.property(sizes, expansions, expansions, (size, aBore, aShaft) => {
        fc.pre(Math.abs(aBore - aShaft) > 1e-6);
        const bore = { size20Mm: size + 0.02, expansionPerC: aBore };
        const shaft = { size20Mm: size, expansionPerC: aShaft };
        const found = temperatureForClearance({ bore, shaft, clearanceMm: 0.005 });
        if (found.kind !== 'found' || Math.abs(found.temperatureC) > 5000) return;
        const both = found.temperatureC;
        const there = clearanceAtTemperatures({ bore, boreC: both, shaft, shaftC: both });
        expect(there.clearanceMm).toBeCloseTo(0.005, 9);
        const hotter = clearanceAtTemperatures({ bore, boreC: both + 9, shaft, shaftC: both + 9 });
        expect(hotter.clearanceMm > there.clearanceMm).toBe(found.tighterWhen === 'cold');
      }),
    );
  });

  it('answers a textbook ring: brass 19.95 mm over a steel rod of 20 mm at about 334 degrees', () => {
    // Knight, Physics for Scientists and Engineers: 50 um too small, a rise of about 313 degrees C
    // with both lengths taken as 20 mm; without that shortcut 314.37.
    const found = temperatureForClearance({
      bore: { size20Mm: 19.95, expansionPerC: 19e-6 },
      shaft: { size20Mm: 20, expansionPerC: 11e-6 },
      clearanceMm: 0,
    });
    expect(found).toMatchObject({ kind: 'found', temperatureC: expect.closeTo(334.3665514, 6) });
  });

  it('says so when both pieces grow alike', () => {
    const piece = { size20Mm: 40.02, expansionPerC: steel };
    expect(temperatureForClearance({ bore: piece, shaft: piece, clearanceMm: 0.02 })).toEqual({
      kind: 'unchanging',
    });
  });

  it('gives no temperature below absolute zero', () => {
    const found = temperatureForClearance({
      bore: { size20Mm: 25.1, expansionPerC: light },
      shaft: { size20Mm: 24.9, expansionPerC: steel },
      clearanceMm: 0,
    });
    expect(found.kind).toBe('never-so-cold');
  });

  it.each([
    ['temperature-for-clearance/length', { bore: { size20Mm: 0, expansionPerC: steel } }],
    ['temperature-for-clearance/expansion', { shaft: { size20Mm: 10, expansionPerC: 1 } }],
    ['temperature-for-clearance/clearance', { clearanceMm: NaN }],
  ])('refuses by %s', (code, part) => {
    const piece = { size20Mm: 10, expansionPerC: steel };
    const good = { bore: piece, shaft: piece, clearanceMm: 0 };
    expect(() => temperatureForClearance({ ...good, ...part })).toThrow(
      expect.objectContaining({ code }),
    );
  });
});
