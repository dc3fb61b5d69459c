import { describe, expect, it } from 'vitest';
import { whitworthThread } from '@/lib/maths/thread/whitworth-thread';

describe('whitworthThread', () => {
  // BS 84 as printed: effective and core diameters, inches.
  it.each([
    [0.25, 20, 0.218, 0.186],
    [0.375, 16, 0.335, 0.295],
    [0.75, 10, 0.686, 0.6219],
  ])('gives %d - %d as printed', (majorIn, tpi, effective, core) => {
    const found = whitworthThread(majorIn, tpi);
    expect(Math.abs(found.effectiveIn - effective)).toBeLessThan(0.0001);
    expect(Math.abs(found.coreIn - core)).toBeLessThan(0.0001);
  });

  it('has the depth and radius of the Whitworth form', () => {
    // One inch of pitch: 55 degrees, sixth parts cut off; H = 0.960491, depth 2H/3 = 0.640327.
    const { pitchIn, depthIn, radiusIn } = whitworthThread(4, 1);
    const height = 0.5 / Math.tan((27.5 * Math.PI) / 180);
    expect(pitchIn).toBe(1);
    expect(depthIn).toBeCloseTo((2 / 3) * height, 6);
    // Crest circle tangent to the flanks: r = (H/6) sin a/(1 - sin a), a half the angle.
    const sine = Math.sin((27.5 * Math.PI) / 180);
    expect(radiusIn).toBeCloseTo(((height / 6) * sine) / (1 - sine), 6);
  });

  it.each([
    [0.05, 20],
    [0.25, 0],
    [Infinity, 20],
  ])('refuses %d - %d', (majorIn, tpi) => {
    expect(() => whitworthThread(majorIn, tpi)).toThrow(
      expect.objectContaining({ code: 'whitworth-thread/size' }),
    );
  });
});
