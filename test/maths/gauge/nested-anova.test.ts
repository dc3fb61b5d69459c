import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nestedAnova } from '@/lib/maths/gauge/nested-anova';
import { oneWayAnova } from '@/lib/maths/statistics/one-way-anova';
import { mean } from '@/lib/maths/statistics/mean';
import { standardDeviation } from '@/lib/maths/statistics/standard-deviation';

describe('nestedAnova', () => {
  // JCGM 100 table H.9 and H.5.2.5: a Zener reference on ten days, five readings a day; microvolts
  // above 10 V (from memory; every printed result below follows from these figures).
  const zener = {
    means: [172, 116, 13, 144, 106, 31, 60, 125, 163, 41],
    sds: [60, 77, 111, 101, 67, 93, 80, 73, 88, 86],
    readings: 5,
  };

  it('gives what the guide prints for the Zener reference', () => {
    const found = nestedAnova(zener);
    expect(Math.round(found.mean)).toBe(97);
    expect(Math.round(Math.sqrt(found.betweenMeanSquare))).toBe(128);
    expect(Math.round(Math.sqrt(found.withinMeanSquare))).toBe(85);
    expect([found.betweenDegrees, found.withinDegrees]).toEqual([9, 40]);
    // (128/85)^2 = 2.27 of rounded figures; the guide prints 2.25.
    expect(found.f).toBeCloseTo(2.25, 1);
    expect(Math.round(Math.sqrt(found.betweenVariance))).toBe(43);
    expect(Math.round(found.uMean)).toBe(18);
    expect(Math.round(found.uMeanPooled)).toBe(13);
    // F(0.95; 9, 40) = 2.12 and F(0.975; 9, 40) = 2.45, as the guide quotes them.
    expect(found.p).toBeGreaterThan(0.025);
    expect(found.p).toBeLessThan(0.05);
  });

  it('agrees with the one-way analysis of the readings themselves', () => {
    const days = [
      [1, 2, 4],
      [2, 5, 3],
      [9, 7, 8],
    ];
    const found = nestedAnova({
      means: days.map((day) => mean(day)),
      sds: days.map((day) => standardDeviation(day)),
      readings: 3,
    });
    const table = oneWayAnova(days);
    expect(found.betweenMeanSquare).toBeCloseTo(table.betweenMeanSquare, 12);
    expect(found.withinMeanSquare).toBeCloseTo(table.withinMeanSquare, 12);
    expect(found.p).toBeCloseTo(table.p!, 12);
    const all = days.flat();
    expect(found.uMeanPooled).toBeCloseTo(standardDeviation(all) / 3, 12);
  });

  it('gives no variance from day to day where days differ less than readings, and no ratio to nothing', () => {
    expect(nestedAnova({ means: [1, 1], sds: [2, 2], readings: 4 }).betweenVariance).toBe(0);
    expect('f' in nestedAnova({ means: [1, 2], sds: [0, 0], readings: 2 })).toBe(false);
  });

  it('does not mind a shift, and carries a scale', () => {
    const day = fc.record({
      mean: fc.integer({ min: -99, max: 99 }),
      sd: fc.integer({ min: 1, max: 9 }),
    });
    const days = fc.array(day, { minLength: 2, maxLength: 9 });
    fc.assert(
      fc.property(days, fc.integer({ min: 2, max: 9 }), (list, readings) => {
        const of = (shift: number, scale: number) =>
          nestedAnova({
            means: list.map(({ mean: m }) => shift + scale * m),
            sds: list.map(({ sd }) => scale * sd),
            readings,
          });
        const [plain, moved] = [of(0, 1), of(1024, 4)];
        expect(moved.uMean).toBeCloseTo(4 * plain.uMean, 9);
        expect(moved.uMeanPooled).toBeCloseTo(4 * plain.uMeanPooled, 9);
        expect(moved.f).toBeCloseTo(plain.f!, 9);
        expect(plain.betweenVariance).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  it.each([
    ['too-few', { means: [1], sds: [1] }],
    ['lengths', { sds: [1, 1, 1] }],
    ['not-finite', { means: [1, NaN] }],
    ['not-finite', { sds: [1, Infinity] }],
    ['negative', { sds: [1, -1] }],
    ['not-whole', { readings: 1 }],
  ])('refuses by %s', (reason, part) => {
    const good = { means: [1, 2], sds: [1, 1], readings: 3 };
    expect(() => nestedAnova({ ...good, ...part })).toThrow(
      expect.objectContaining({ code: `nested-anova/${reason}` }),
    );
  });
});
