import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { classLimits } from '@/lib/maths/iso286/class-limits';
import { nearestClasses } from '@/lib/maths/iso286/nearest-classes';

describe('nearestClasses', () => {
  it('finds the very class whose limits are wanted', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('g6', 'f7', 'h9', 'js7', 'n6', 'u6', 'H8', 'K7', 'D10', 'M6'),
        fc.double({ min: 4, max: 499, noNaN: true }),
        (text, nominalMm) => {
          const { side, upperUm, lowerUm } = classLimits(text, nominalMm);
          const [found] = nearestClasses({ side, nominalMm, upperUm, lowerUm, count: 1 });
          expect(found!.offUm).toBe(0);
          expect(classLimits(found!.text, nominalMm)).toEqual({ side, upperUm, lowerUm });
        },
      ),
      { numRuns: 40 },
    );
  });

  it('puts the nearest first by the worse of the two limits', () => {
    const wanted = { side: 'external', nominalMm: 25, upperUm: -9, lowerUm: -24 } as const;
    const found = nearestClasses({ ...wanted, count: 300 });
    expect(found[0]).toEqual({ text: 'g6', upperUm: -7, lowerUm: -20, offUm: 4 });
    // Of two as far off by the worse limit, the nearer by both together.
    const sums = found.map((one) => Math.abs(one.upperUm + 9) + Math.abs(one.lowerUm + 24));
    found.forEach((one, k) => {
      const before = found[k - 1];
      if (before?.offUm === one.offUm) expect(sums[k]).toBeGreaterThanOrEqual(sums[k - 1]!);
    });
    expect(found.map((one) => one.offUm)).toEqual(
      found.map((one) => one.offUm).toSorted((a, b) => a - b),
    );
  });

  it.each([
    ['nearest-classes/limits', { upperUm: 0, lowerUm: 0 }],
    ['nearest-classes/limits', { upperUm: NaN, lowerUm: 0 }],
    ['nearest-classes/count', { count: 0 }],
    ['it-grade/size', { nominalMm: 4000 }],
  ])('refuses by %s', (code, part) => {
    const good = { side: 'internal', nominalMm: 25, upperUm: 20, lowerUm: 0, count: 1 } as const;
    expect(() => nearestClasses({ ...good, ...part })).toThrow(expect.objectContaining({ code }));
  });
});
