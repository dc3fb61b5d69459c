import { describe, expect, it } from 'vitest';
import { baThread } from '@/lib/maths/thread/ba-thread';

describe('baThread', () => {
  it('gives every size of the series as tabulated', () => {
    // BS 93: pitch and major diameter, mm, 0 BA to 16 BA (Machinery's Handbook, from memory; the even
    // ones also in a model engineer's note that was read).
    const tabulated = [
      [1, 6],
      [0.9, 5.3],
      [0.81, 4.7],
      [0.73, 4.1],
      [0.66, 3.6],
      [0.59, 3.2],
      [0.53, 2.8],
      [0.48, 2.5],
      [0.43, 2.2],
      [0.39, 1.9],
      [0.35, 1.7],
      [0.31, 1.5],
      [0.28, 1.3],
      [0.25, 1.2],
      [0.23, 1],
      [0.21, 0.9],
      [0.19, 0.79],
    ];
    const found = tabulated.map((_, number) => {
      const { pitchMm, majorMm } = baThread(number);
      return [pitchMm, majorMm];
    });
    expect(found).toEqual(tabulated);
  });

  it('takes the depth as 0.6 of the pitch', () => {
    const { depthMm, effectiveMm, minorMm, flankAngleDeg } = baThread(0);
    expect([depthMm, effectiveMm, minorMm, flankAngleDeg]).toEqual([0.6, 5.4, 4.8, 47.5]);
    // 2 BA by hand: P = 0.81, d = 4.7.
    expect(baThread(2).depthMm).toBeCloseTo(0.486, 12);
    expect(baThread(2).effectiveMm).toBeCloseTo(4.214, 12);
    expect(baThread(2).minorMm).toBeCloseTo(3.728, 12);
  });

  it.each([-1, 17, 2.5])('refuses number %d', (number) => {
    expect(() => baThread(number)).toThrow(expect.objectContaining({ code: 'ba-thread/number' }));
  });
});
