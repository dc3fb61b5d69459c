import { describe, expect, it } from 'vitest';
import { smoothingLoss } from '@/lib/maths/joint/smoothing-loss';

describe('smoothingLoss', () => {
  it('takes 0.8 of both roughnesses off by DIN 7190 of 2001, half of it by that of 2017', () => {
    // By hand: 0.8 x (6.3 + 4) um = 8.24 um, 0.4 x 10.3 = 4.12 um.
    const surface = { hubRzUm: 6.3, shaftRzUm: 4 };
    const old = smoothingLoss(0.018, { ...surface, factor: 0.8 });
    expect(old.lossMm).toBeCloseTo(0.00824, 12);
    expect(old.effectiveMm).toBeCloseTo(0.00976, 12);
    expect(smoothingLoss(0.018, { ...surface, factor: 0.4 }).lossMm).toBeCloseTo(0.00412, 12);
  });

  it('leaves nothing rather than less than nothing', () => {
    const rough = { hubRzUm: 10, shaftRzUm: 10, factor: 0.8 };
    expect(smoothingLoss(0.006, rough).effectiveMm).toBe(0);
    expect(smoothingLoss(-0.006, rough).effectiveMm).toBe(0);
  });

  it.each([
    ['smoothing-loss/surface', 0.01, { hubRzUm: -1 }],
    ['smoothing-loss/surface', 0.01, { factor: NaN }],
    ['smoothing-loss/interference', Infinity, {}],
  ])('refuses by %s', (code, interference, part) => {
    const surface = { hubRzUm: 6, shaftRzUm: 4, factor: 0.8, ...part };
    expect(() => smoothingLoss(interference, surface)).toThrow(expect.objectContaining({ code }));
  });
});
