import { describe, expect, it } from 'vitest';
import { isoMetricThread } from '@/lib/maths/thread/iso-metric-thread';

describe('isoMetricThread', () => {
  it('gives the basic sizes of ISO 724', () => {
    // ISO 724 (printed to 0.001): M10 9.026 and 8.376; M6 5.350 and 4.917; M24 22.051 and 20.752.
    for (const [d, P, d2, D1] of [
      [10, 1.5, 9.026, 8.376],
      [6, 1, 5.35, 4.917],
      [24, 3, 22.051, 20.752],
    ] as const) {
      expect(isoMetricThread(d, P).pitchDiameterMm).toBeCloseTo(d2, 3);
      expect(isoMetricThread(d, P).minorInternalMm).toBeCloseTo(D1, 3);
    }
  });

  it('gives the stress areas of ISO 898-1', () => {
    // ISO 898-1, three printed figures: M5 14.2, M8 36.6, M12 84.3, M20 245.
    for (const [d, P, area] of [
      [5, 0.8, 14.2],
      [8, 1.25, 36.6],
      [12, 1.75, 84.3],
      [20, 2.5, 245],
    ] as const) {
      expect(Math.abs(isoMetricThread(d, P).stressAreaMm2 / area - 1)).toBeLessThan(0.004);
    }
  });

  it.each([
    [10, 0],
    [1, 1],
    [Infinity, 1],
    [NaN, 1],
  ])('refuses %d x %d', (d, P) => {
    expect(() => isoMetricThread(d, P)).toThrow(
      expect.objectContaining({ code: 'iso-metric-thread/size' }),
    );
  });
});
