import { describe, expect, it } from 'vitest';
import { isoExternalLimits } from '@/lib/maths/thread/iso-external-limits';

describe('isoExternalLimits', () => {
  // Limits as printed in a metric external thread chart after ASME B1.13M, read on a page copy:
  // [thread, class, major max, min, pitch max, min].
  it.each([
    [1.6, 0.35, '6g', 1.581, 1.496, 1.354, 1.291],
    [1.6, 0.35, '6h', 1.6, 1.515, 1.373, 1.31],
    [2, 0.4, '4g6g', 1.981, 1.886, 1.721, 1.679],
    [3.5, 0.6, '6g', 3.479, 3.354, 3.089, 3.004],
    [5, 0.8, '6h', 5, 4.85, 4.48, 4.385],
    [8, 1.25, '4g6g', 7.972, 7.76, 7.16, 7.085],
    [10, 0.75, '6g', 9.978, 9.838, 9.491, 9.391],
    [10, 1.5, '6g', 9.968, 9.732, 8.994, 8.862],
  ])('gives M%d x %d %s as printed', (d, P, typed, majorMax, majorMin, pitchMax, pitchMin) => {
    expect(isoExternalLimits(d, P, typed)).toEqual({
      major: { maxMm: majorMax, minMm: majorMin },
      pitch: { maxMm: pitchMax, minMm: pitchMin },
    });
  });

  it.each(['6H', '6', 'g', '6g4h', '10g', '6d', ''])('refuses the class %j', (typed) => {
    expect(() => isoExternalLimits(10, 1.5, typed)).toThrow(
      expect.objectContaining({ code: 'iso-external-limits/class' }),
    );
  });

  it('refuses position e below a pitch of 0.5 mm and a pitch that is not of the standard', () => {
    expect(() => isoExternalLimits(2, 0.4, '6e')).toThrow(
      expect.objectContaining({ code: 'iso-external-limits/class' }),
    );
    expect(() => isoExternalLimits(10, 1.1, '6g')).toThrow(
      expect.objectContaining({ code: 'iso-external-limits/pitch' }),
    );
  });
});
