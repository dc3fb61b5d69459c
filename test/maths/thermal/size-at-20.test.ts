import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sizeAt20 } from '@/lib/maths/thermal/size-at-20';
import { sizeAtTemperature } from '@/lib/maths/thermal/size-at-temperature';

// Coefficients are made up of usual size; nothing is said of a material.
const steel = 11.5e-6;
const sizes = fc.double({ min: 5, max: 300, noNaN: true });
const expansions = fc.double({ min: 1e-6, max: 3e-5, noNaN: true });
const temperatures = fc.double({ min: -60, max: 300, noNaN: true });

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

  it('carries the doubt of the reading through the gauge as well', () => {
    // By hand: (1 + 100e-6 x 100) / (1 + 0) x 0.001 = 0.00101.
    const found = sizeAt20({
      readingMm: 100,
      uReadingMm: 0.001,
      pieceExpansionPerC: steel,
      pieceTemperatureC: 20,
      gaugeExpansionPerC: 100e-6,
      gaugeTemperatureC: 120,
    });
    expect(found.uMm).toBeCloseTo(0.00101, 12);
  });

  it('doubts nothing that it is not told to, and takes a gauge left out for a true one', () => {
    const reading = { readingMm: 100, pieceExpansionPerC: steel, pieceTemperatureC: 40 };
    expect(sizeAt20(reading).uMm).toBe(0);
    expect(sizeAt20({ ...reading, gaugeTemperatureC: 40 })).toEqual(sizeAt20(reading));
  });

  it('counts the doubt of a temperature alike whether the piece grows or shrinks', () => {
    const reading = { readingMm: 100, pieceTemperatureC: 20, uPieceTemperatureC: 1 };
    const grows = sizeAt20({ ...reading, pieceExpansionPerC: 1e-6 });
    const shrinks = sizeAt20({ ...reading, pieceExpansionPerC: -1e-6 });
    expect(shrinks.parts.temperatureMm).toBe(grows.parts.temperatureMm);
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
