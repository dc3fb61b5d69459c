import { describe, expect, it } from 'vitest';
import { andersonDarlingTest } from '@/lib/maths/statistics/anderson-darling-test';
import { spreadWithinStep } from '@/lib/maths/statistics/spread-within-step';
import { seededDraws } from '@/test/measure/seeded-draws';

describe('spreadWithinStep', () => {
  it('spreads equal values evenly over their step, and leaves single ones', () => {
    expect(spreadWithinStep([2, 1, 2], 1)).toEqual([1, 1.75, 2.25]);
    expect(spreadWithinStep([5, 5, 5, 5], 2)).toEqual([4.25, 4.75, 5.25, 5.75]);
    expect(spreadWithinStep([0.3, 0.1], 0.1)).toEqual([0.1, 0.3]);
  });

  it('keeps the mean and the order, whatever the step', () => {
    const values = [3, 3, 4, 4, 4, 7];
    for (const step of [0.001, 0.5, 1]) {
      const spread = spreadWithinStep(values, step);
      expect(spread.reduce((sum, one) => sum + one, 0)).toBeCloseTo(25, 9);
      expect(spread).toEqual(spread.toSorted((a, b) => a - b));
    }
  });

  // Own simulation, 200 rounded normal samples each: the level of the test is 5 %.
  it.each([
    [1.67, 30],
    [1.67, 100],
    [1.67, 300],
    [3.4, 30],
    [3.4, 100],
    [3.4, 300],
  ])(
    'lets Anderson and Darling judge sizes of %f steps of spread, %i of them, at no more than its level',
    (sigma, count) => {
      const { normal } = seededDraws(count);
      let [plain, spread] = [0, 0];
      for (let round = 0; round < 200; round += 1) {
        const values = Array.from({ length: count }, () => Math.round(0.37 + sigma * normal()));
        if (andersonDarlingTest(values).p < 0.05) plain += 1;
        if (andersonDarlingTest(spreadWithinStep(values, 1)).p < 0.05) spread += 1;
      }
      expect(spread).toBeLessThanOrEqual(18); // 10 expected, and 2.6 standard deviations of it
      expect(plain).toBeGreaterThan(spread);
    },
  );

  it('still tells two tools that are mixed', () => {
    const { normal } = seededDraws(5);
    let told = 0;
    for (let round = 0; round < 50; round += 1) {
      const values = Array.from({ length: 100 }, (_, i) =>
        Math.round((i % 2) * 8 + 1.67 * normal()),
      );
      if (andersonDarlingTest(spreadWithinStep(values, 1)).p < 0.05) told += 1;
    }
    expect(told).toBe(50);
  });

  it('refuses what is no step or no value', () => {
    expect(() => spreadWithinStep([1], 0)).toThrow('a step above 0, got 0');
    expect(() => spreadWithinStep([1], NaN)).toThrow('a step above 0, got NaN');
    expect(() => spreadWithinStep([NaN], 1)).toThrow('got NaN at index 0');
    expect(() => spreadWithinStep([], 1)).toThrow('at least one value, got 0');
  });
});
