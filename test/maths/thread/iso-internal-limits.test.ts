import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isoExternalLimits } from '@/lib/maths/thread/iso-external-limits';
import { isoInternalLimits } from '@/lib/maths/thread/iso-internal-limits';
import { pitchDiameter } from '@/lib/maths/thread/iso965-tables';

describe('isoInternalLimits', () => {
  // Limits 6H as tabulated in the open thread library of A. Schlatter (metric_thread.csv, after DIN 13),
  // and M1.6 to M6 pitch diameters 4H, 5H, 6H and 6G in a tap maker's chart of ISO tolerances:
  // [thread, class, minor min, max, pitch min, max].
  it.each([
    [1.6, 0.35, '6H', 1.221, 1.321, 1.373, 1.458],
    [3, 0.5, '6H', 2.459, 2.599, 2.675, 2.775],
    [5, 0.8, '6H', 4.134, 4.334, 4.48, 4.605],
    [12, 1.75, '6H', 10.106, 10.441, 10.863, 11.063],
    [18, 2, '6H', 15.835, 16.21, 16.701, 16.913],
    [30, 3.5, '6H', 26.211, 26.771, 27.727, 28.007],
    [42, 4.5, '6H', 37.129, 37.799, 39.077, 39.392],
    [48, 5, '6H', 42.587, 43.297, 44.752, 45.087],
    [56, 5.5, '6H', 50.046, 50.796, 52.428, 52.783],
    [64, 6, '6H', 57.505, 58.305, 60.103, 60.478],
    [95, 6, '6H', 88.505, 89.305, 91.103, 91.503],
    [100, 3, '6H', 96.752, 97.252, 98.051, 98.351],
  ])('gives M%d x %d %s as printed', (d, P, typed, minorMin, minorMax, pitchMin, pitchMax) => {
    expect(isoInternalLimits(d, P, typed)).toEqual({
      minor: { maxMm: minorMax, minMm: minorMin },
      pitch: { maxMm: pitchMax, minMm: pitchMin },
      majorMinMm: d,
    });
  });

  it.each([
    [2, 0.4, '4H', 56],
    [2, 0.4, '5H', 71],
    [3, 0.5, '4H', 63],
    [4, 0.7, '5H', 95],
    [6, 1, '4H', 95],
    [6, 1, '5H', 118],
    [8, 1.25, '5H', 125],
  ])('gives the pitch diameter of M%d x %d %s the %d um of the chart', (d, P, typed, um) => {
    const { pitch } = isoInternalLimits(d, P, typed);
    expect(Math.round((pitch.maxMm - pitch.minMm) * 1000)).toBe(um);
  });

  it('moves position G up by the deviation of g', () => {
    // The chart prints 176 um for 6G of M6 x 1, which is 150 + 26.
    const { pitch, majorMinMm } = isoInternalLimits(6, 1, '6G');
    const basic = isoInternalLimits(6, 1, '6H').pitch.minMm;
    expect(Math.round((pitch.maxMm - basic) * 1000)).toBe(176);
    expect(majorMinMm).toBe(6.026);
  });

  it('always lets an external thread g or h into an internal one', () => {
    const cells = fc.constantFrom(...pitchDiameter);
    fc.assert(
      fc.property(cells, fc.constantFrom('6g', '6h', '6f'), (cell, typed) => {
        const external = isoExternalLimits(cell.upToMm, cell.pitchMm, typed);
        const internal = isoInternalLimits(cell.upToMm, cell.pitchMm, '6H');
        expect(external.pitch.maxMm).toBeLessThanOrEqual(internal.pitch.minMm);
        expect(external.major.maxMm).toBeLessThanOrEqual(internal.majorMinMm);
      }),
    );
  });

  it('lets the pitch diameter have a grade of its own', () => {
    const both = isoInternalLimits(10, 1.5, '5H6H');
    expect(both.minor).toEqual(isoInternalLimits(10, 1.5, '6H').minor);
    expect(both.pitch).toEqual(isoInternalLimits(10, 1.5, '5H').pitch);
  });

  it.each(['6g', '9H', '6F', '6H5G', ''])('refuses the class %j', (typed) => {
    expect(() => isoInternalLimits(10, 1.5, typed)).toThrow(
      expect.objectContaining({ code: 'iso-internal-limits/class' }),
    );
  });

  it('refuses a pitch that is not of the standard', () => {
    expect(() => isoInternalLimits(10, 1.1, '6H')).toThrow(
      expect.objectContaining({ code: 'iso-internal-limits/pitch' }),
    );
  });
});
