import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { absolutePressure, type PressureUnit } from '@/lib/maths/steam/absolute-pressure';
import { saturationPressure } from '@/lib/maths/steam/saturation-pressure';
import { saturationTemperature } from '@/lib/maths/steam/saturation-temperature';

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

describe('saturationTemperature', () => {
  // IAPWS R7-97(2012) table 36, nine printed figures.
  it.each([
    [0.1, 0.372755919e3],
    [1, 0.453035632e3],
    [10, 0.584149488e3],
  ])('gives the check value at %d MPa', (pressureMPa, wanted) => {
    expect(Math.abs(saturationTemperature(pressureMPa) - wanted)).toBeLessThan(1e-6);
  });

  it('undoes saturationPressure, as region 4 is one equation read both ways', () => {
    fc.assert(
      fc.property(fc.double({ min: 273.2, max: 646.9, noNaN: true }), (temperatureK) => {
        const back = saturationTemperature(saturationPressure(temperatureK));
        // The two roots cancel near the critical point; 1e-6 K is far below any use.
        expect(Math.abs(back - temperatureK)).toBeLessThan(1e-6);
      }),
    );
  });

  it.each([0.000611, 22.0641, 0, NaN])('refuses %d MPa', (p) => {
    expect(() => saturationTemperature(p)).toThrow(
      expect.objectContaining({ code: 'saturation-temperature/pressure' }),
    );
  });
});

describe('absolutePressure', () => {
  it('adds the atmosphere to what the gauge shows, in each unit', () => {
    expect(absolutePressure(7, 'bar', 101.325)).toBeCloseTo(0.801325, 12);
    // 1 psi = 6894.757293168 Pa (exact pound, inch and standard gravity, NIST SP 811).
    expect(absolutePressure(100, 'psi', 101.325)).toBeCloseTo(0.7908007293168, 12);
    expect(absolutePressure(250, 'kPa', 95)).toBeCloseTo(0.345, 12);
    expect(absolutePressure(1, 'MPa', 100)).toBeCloseTo(1.1, 12);
  });

  it('takes a vacuum as below zero on the gauge', () => {
    expect(absolutePressure(-0.5, 'bar', 100)).toBeCloseTo(0.05, 12);
  });

  it.each([
    [-1.1, 'bar', 100],
    [1, 'bar', -1],
    [NaN, 'bar', 100],
    [1, 'ell' as PressureUnit, 100],
  ] as const)('refuses %d %s over %d kPa', (gauge, unit, atmosphere) => {
    expect(() => absolutePressure(gauge, unit, atmosphere)).toThrow(
      expect.objectContaining({ code: 'absolute-pressure/pressure' }),
    );
  });
});
