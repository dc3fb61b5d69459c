import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clearanceAtTemperatures } from '@/lib/maths/thermal/clearance-at-temperatures';
import { clearanceOverRange } from '@/lib/maths/thermal/clearance-over-range';
import { heatOnePiece } from '@/lib/maths/thermal/heat-one-piece';
import { sizeAt20 } from '@/lib/maths/thermal/size-at-20';
import { sizeAtTemperature } from '@/lib/maths/thermal/size-at-temperature';
import { temperatureForClearance } from '@/lib/maths/thermal/temperature-for-clearance';
import { tightestMoment } from '@/lib/maths/thermal/tightest-moment';

// Coefficients are made up of usual size; nothing is said of a material.
const steel = 11.5e-6;
const light = 23.1e-6;
const sizes = fc.double({ min: 5, max: 300, noNaN: true });
const expansions = fc.double({ min: 1e-6, max: 3e-5, noNaN: true });
const temperatures = fc.double({ min: -60, max: 300, noNaN: true });

describe('sizeAtTemperature', () => {
  it('lets 100 mm at 11.5e-6 grow by 0.069 mm over 60 degrees', () => {
    // By hand: 100 x 11.5e-6 x 60 = 0.069.
    const hot = sizeAtTemperature({ size20Mm: 100, expansionPerC: steel, temperatureC: 80 });
    expect(hot).toBeCloseTo(100.069, 12);
  });

  it('changes nothing at 20 degrees', () => {
    expect(sizeAtTemperature({ size20Mm: 33.3, expansionPerC: light, temperatureC: 20 })).toBe(
      33.3,
    );
  });

  it.each([
    ['size-at-temperature/length', { size20Mm: 0 }],
    ['size-at-temperature/expansion', { expansionPerC: 11.5 }],
    ['size-at-temperature/expansion', { expansionPerC: NaN }],
    ['size-at-temperature/temperature', { temperatureC: -274 }],
    ['size-at-temperature/temperature', { temperatureC: Infinity }],
  ])('refuses by %s', (code, part) => {
    const good = { size20Mm: 10, expansionPerC: steel, temperatureC: 30 };
    expect(() => sizeAtTemperature({ ...good, ...part })).toThrow(
      expect.objectContaining({ code }),
    );
  });
});

describe('sizeAt20', () => {
  it('undoes sizeAtTemperature for a true gauge', () => {
    fc.assert(
      fc.property(sizes, expansions, temperatures, (size20Mm, expansionPerC, temperatureC) => {
        const readingMm = sizeAtTemperature({ size20Mm, expansionPerC, temperatureC });
        const back = sizeAt20({
          readingMm,
          pieceExpansionPerC: expansionPerC,
          pieceTemperatureC: temperatureC,
        });
        // Two roundings of a double near 300 mm.
        expect(Math.abs(back.size20Mm - size20Mm)).toBeLessThan(2e-13);
        expect(back.size20Mm).toBe(readingMm + back.correctionMm);
      }),
    );
  });

  it('needs no correction when gauge and piece grow alike', () => {
    const same = sizeAt20({
      readingMm: 120,
      pieceExpansionPerC: steel,
      pieceTemperatureC: 26,
      gaugeExpansionPerC: steel,
      gaugeTemperatureC: 26,
    });
    expect(same.correctionMm).toBe(0);
  });

  it('adds to the reading for a warm gauge and takes off for a warm piece', () => {
    // By hand: 100 mm x 11.5e-6 x 10 degrees = 0.0115 mm; the division by 1.000115 takes 1.3e-6 off.
    const base = { readingMm: 100, pieceExpansionPerC: steel, gaugeExpansionPerC: steel };
    const gauge = sizeAt20({ ...base, pieceTemperatureC: 20, gaugeTemperatureC: 30 });
    expect(gauge.correctionMm).toBeCloseTo(0.0115, 12);
    const piece = sizeAt20({ ...base, pieceTemperatureC: 30, gaugeTemperatureC: 20 });
    expect(piece.correctionMm).toBeCloseTo(-0.0114986776, 9);
  });

  it('propagates like small changes of each input do', () => {
    fc.assert(
      fc.property(sizes, expansions, temperatures, (readingMm, alpha, temperatureC) => {
        const size = (r: number, a: number, t: number) =>
          sizeAt20({ readingMm: r, pieceExpansionPerC: a, pieceTemperatureC: t }).size20Mm;
        const found = sizeAt20({
          readingMm,
          uReadingMm: 0.001,
          pieceExpansionPerC: alpha,
          uPieceExpansionPerC: 1e-6,
          pieceTemperatureC: temperatureC,
          uPieceTemperatureC: 0.5,
        });
        const half = (high: number, low: number) => Math.abs(high - low) / 2;
        const parts = [
          half(
            size(readingMm + 0.001, alpha, temperatureC),
            size(readingMm - 0.001, alpha, temperatureC),
          ),
          half(
            size(readingMm, alpha + 1e-6, temperatureC),
            size(readingMm, alpha - 1e-6, temperatureC),
          ),
          half(
            size(readingMm, alpha, temperatureC + 0.5),
            size(readingMm, alpha, temperatureC - 0.5),
          ),
        ];
        // Central differences are off by the third-order term, 300 mm x (280 x 1e-6)^3 = 7e-9 at most.
        expect(Math.abs(found.parts.readingMm - parts[0]!)).toBeLessThan(1e-8);
        expect(Math.abs(found.parts.expansionMm - parts[1]!)).toBeLessThan(1e-8);
        expect(Math.abs(found.parts.temperatureMm - parts[2]!)).toBeLessThan(1e-8);
        expect(found.uMm).toBeCloseTo(Math.hypot(...parts), 7);
      }),
    );
  });

  it.each([
    ['size-at-20/length', { readingMm: -1 }],
    ['size-at-20/expansion', { gaugeExpansionPerC: 1 }],
    ['size-at-20/temperature', { gaugeTemperatureC: -300 }],
    ['size-at-20/uncertainty', { uReadingMm: -0.001 }],
    ['size-at-20/uncertainty', { uPieceTemperatureC: NaN }],
  ])('refuses by %s', (code, part) => {
    const good = { readingMm: 10, pieceExpansionPerC: steel, pieceTemperatureC: 30 };
    expect(() => sizeAt20({ ...good, ...part })).toThrow(expect.objectContaining({ code }));
  });
});

describe('clearanceAtTemperatures', () => {
  it('gives each piece its own material and temperature', () => {
    // By hand: bore 60 at 20 degrees; shaft 59.955 x (1 + 11.5e-6 x 65) = 59.9998163625.
    const found = clearanceAtTemperatures({
      bore: { size20Mm: 60, expansionPerC: light },
      boreC: 20,
      shaft: { size20Mm: 59.955, expansionPerC: steel },
      shaftC: 85,
    });
    expect(found.boreMm).toBe(60);
    expect(found.clearanceMm).toBeCloseTo(0.0001836375, 10);
  });
});

describe('clearanceOverRange', () => {
  const pair = {
    bore: { size20Mm: 25.01, expansionPerC: light },
    shaft: { size20Mm: 24.99, expansionPerC: steel },
  };

  it('finds a light-metal housing tightest in the frost', () => {
    const found = clearanceOverRange({ ...pair, temperaturesC: [60, -25, 20] });
    expect(found.smallestAtC).toBe(-25);
    // By hand: 25.01 (1 - 23.1e-6 x 45) - 24.99 (1 - 11.5e-6 x 45) = 0.00693443.
    expect(found.smallestMm).toBeCloseTo(0.00693443, 9);
    expect(found.clearancesMm).toHaveLength(3);
  });

  it('refuses an empty list', () => {
    expect(() => clearanceOverRange({ ...pair, temperaturesC: [] })).toThrow(
      expect.objectContaining({ code: 'clearance-over-range/no-temperature' }),
    );
  });
});

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
          if (found.kind !== 'found') return;
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
