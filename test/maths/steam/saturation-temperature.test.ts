import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { saturationPressure } from '@/lib/maths/steam/saturation-pressure';
import { saturationTemperature } from '@/lib/maths/steam/saturation-temperature';

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
