import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ovalFromDirections } from '@/lib/maths/form/oval-from-directions';

const section = (meanMm: number, halfMm: number, axisDeg: number, directionsDeg: number[]) => ({
  directionsDeg,
  diametersMm: directionsDeg.map(
    (deg) => meanMm + halfMm * Math.cos(((deg - axisDeg) * Math.PI) / 90),
  ),
});

describe('ovalFromDirections', () => {
  it('finds the oval that lies between the directions', () => {
    // By hand: 25 at 0 and 90, 25.006 at 45 gives q = 0.006, p = 0, so 0.012 full at 45 degrees.
    const fit = ovalFromDirections({
      directionsDeg: [0, 45, 90],
      diametersMm: [25, 25.006, 25],
    });
    expect(fit.ovalityMm).toBeCloseTo(0.012, 12);
    expect(fit.largeAxisDeg).toBeCloseTo(45, 9);
    expect(fit.seenMm).toBeCloseTo(0.006, 12);
    expect(fit.residualMm).toBeLessThan(1e-12);
  });

  it('brings back the oval it was given, whatever the directions', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 5, max: 200, noNaN: true }),
        fc.double({ min: 0.0005, max: 0.05, noNaN: true }),
        fc.double({ min: 0, max: 179.9, noNaN: true }),
        fc.integer({ min: 0, max: 30 }),
        (meanMm, halfMm, axisDeg, turn) => {
          const directions = [0, 40, 75, 130].map((deg) => deg + turn);
          const fit = ovalFromDirections(section(meanMm, halfMm, axisDeg, directions));
          // Doubles near 200 are 3e-14 apart; the fit spreads that by a factor below 100.
          expect(Math.abs(fit.ovalityMm - 2 * halfMm)).toBeLessThan(1e-11);
          expect(Math.abs(fit.meanMm - meanMm)).toBeLessThan(1e-11);
          const turned = Math.abs(fit.largeAxisDeg - axisDeg);
          expect(Math.min(turned, 180 - turned)).toBeLessThan(1e-5);
        },
      ),
    );
  });

  it('takes two directions half a turn apart for one', () => {
    const full = { directionsDeg: [0, 90, 180], diametersMm: [10, 10, 10] };
    expect(() => ovalFromDirections(full)).toThrow(
      expect.objectContaining({ code: 'oval-from-directions/too-few-directions' }),
    );
  });

  it('says how much of the doubt of a reading the ovality carries', () => {
    // Evenly spread, var p = var q = 2/n: sqrt(8/3) = 1.632993 for three directions, sqrt 2 for four.
    const gain = (directionsDeg: number[]) =>
      ovalFromDirections({ directionsDeg, diametersMm: directionsDeg.map(() => 10) })
        .uncertaintyGain;
    expect(gain([0, 60, 120])).toBeCloseTo(1.632993, 6);
    expect(gain([0, 45, 90, 135])).toBeCloseTo(Math.SQRT2, 12);
    expect(gain([0, 5, 10])).toBeGreaterThan(50);
  });

  it('carries that doubt as small changes of each reading do, in the worst direction', () => {
    const directionsDeg = [0, 25, 70];
    const gainAt = (axisDeg: number) => {
      const plain = section(20, 5, axisDeg, directionsDeg);
      const slopes = directionsDeg.map((_, i) => {
        const moved = plain.diametersMm.map((mm, k) => (k === i ? mm + 1e-5 : mm));
        const more = ovalFromDirections({ directionsDeg, diametersMm: moved }).ovalityMm;
        return (more - ovalFromDirections(plain).ovalityMm) / 1e-5;
      });
      return Math.hypot(...slopes);
    };
    const worst = Math.max(...Array.from({ length: 720 }, (_, k) => gainAt(k / 4)));
    const { uncertaintyGain } = ovalFromDirections(section(20, 5, 0, directionsDeg));
    // Steps of a quarter degree miss the worst axis by (0.125 deg in radians, doubled)^2 / 2 = 1e-5.
    expect(worst / uncertaintyGain).toBeCloseTo(1, 4);
  });

  it('says how far the readings lie off an oval', () => {
    // (+1, -1, +1, -1) um at 0, 45, 90, 135 is a four-lobed pattern: no oval at all.
    const fit = ovalFromDirections({
      directionsDeg: [0, 45, 90, 135],
      diametersMm: [10.001, 9.999, 10.001, 9.999],
    });
    expect(fit.ovalityMm).toBeLessThan(1e-12);
    expect(fit.residualMm).toBeCloseTo(0.001, 12);
  });

  it.each([
    ['oval-from-directions/shape', { directionsDeg: [0, 60], diametersMm: [1, 1, 1] }],
    ['oval-from-directions/value', { directionsDeg: [0, 60, NaN], diametersMm: [1, 1, 1] }],
    ['oval-from-directions/value', { directionsDeg: [0, 60, 120], diametersMm: [1, 1, 0] }],
    ['oval-from-directions/bunched', { directionsDeg: [0, 0.01, 0.02], diametersMm: [1, 1, 1] }],
  ])('refuses by %s', (code, readings) => {
    expect(() => ovalFromDirections(readings)).toThrow(expect.objectContaining({ code }));
  });
});
