import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { saturationPressure } from '@/lib/maths/steam/saturation-pressure';

describe('saturationPressure', () => {
  // IAPWS R7-97(2012) table 35, nine printed figures: half a unit of the last.
  it.each([
    [300, 0.353658941e-2],
    [500, 0.263889776e1],
    [600, 0.123443146e2],
  ])('gives the check value at %d K', (temperatureK, wanted) => {
    expect(Math.abs(saturationPressure(temperatureK) / wanted - 1)).toBeLessThan(2e-9);
  });

  it('rises all the way', () => {
    fc.assert(
      fc.property(fc.double({ min: 273.15, max: 647, noNaN: true }), (temperatureK) => {
        expect(saturationPressure(temperatureK + 0.05)).toBeGreaterThan(
          saturationPressure(temperatureK),
        );
      }),
    );
  });

  it.each([273.149, 647.0961, NaN, -10])('refuses %d K rather than going on past the line', (T) => {
    expect(() => saturationPressure(T)).toThrow(
      expect.objectContaining({ code: 'saturation-pressure/temperature' }),
    );
  });

  it('answers at both ends', () => {
    // Ends of the line as the formulation states them: 611.213 Pa and 22.064 MPa.
    expect(saturationPressure(273.15) * 1e6).toBeCloseTo(611.213, 3);
    expect(saturationPressure(647.096)).toBeCloseTo(22.064, 6);
  });
});
