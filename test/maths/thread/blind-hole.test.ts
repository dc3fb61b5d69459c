import { describe, expect, it } from 'vitest';
import { blindHole } from '@/lib/maths/thread/blind-hole';

describe('blindHole', () => {
  const hole = {
    drillMm: 5,
    pitchMm: 1,
    fullThreadMm: 9,
    runoutPitches: 3,
    pointAngleDeg: 90,
    stockMm: 16,
    leastWallMm: 1,
  };

  it('adds runout and point to the thread', () => {
    // A point of 90 degrees is half the drill long: 2.5. 9 + 3 + 2.5 = 14.5, 1.5 left of 16.
    const found = blindHole(hole);
    expect(found.pointMm).toBeCloseTo(2.5, 12);
    expect(found.fullDiameterDepthMm).toBe(12);
    expect(found.totalDepthMm).toBeCloseTo(14.5, 12);
    expect(found.wallLeftMm).toBeCloseTo(1.5, 12);
    expect(found.wallIsEnough).toBe(true);
    expect(found.deepestFullThreadMm).toBeCloseTo(9.5, 12);
  });

  it('counts the runout in pitches', () => {
    expect(blindHole({ ...hole, pitchMm: 1.25 }).fullDiameterDepthMm).toBe(12.75);
    expect(blindHole({ ...hole, fullThreadMm: 0, runoutPitches: 0 }).fullDiameterDepthMm).toBe(0);
  });

  it('says when the drill breaks through and how deep would do', () => {
    const deep = blindHole({ ...hole, fullThreadMm: 12 });
    expect(deep.wallLeftMm).toBeCloseTo(-1.5, 12);
    expect(deep.wallIsEnough).toBe(false);
    const right = blindHole({ ...hole, fullThreadMm: deep.deepestFullThreadMm });
    expect(right.wallLeftMm).toBeCloseTo(1, 12);
  });

  it('has no point with a flat drill', () => {
    expect(blindHole({ ...hole, pointAngleDeg: 180 }).pointMm).toBeCloseTo(0, 12);
  });

  it.each([
    ['blind-hole/size', { drillMm: 0 }],
    ['blind-hole/size', { fullThreadMm: -1 }],
    ['blind-hole/angle', { pointAngleDeg: 0 }],
    ['blind-hole/angle', { pointAngleDeg: 181 }],
  ])('refuses by %s', (code, part) => {
    expect(() => blindHole({ ...hole, ...part })).toThrow(expect.objectContaining({ code }));
  });
});
