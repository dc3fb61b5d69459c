import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cusumChart, type CusumInput } from '@/lib/maths/control/cusum-chart';
import { expectEachNear, expectNear } from './near';

// Montgomery, Introduction to Statistical Quality Control, Table 9.1 (from memory): the first twenty
// from N(10, 1), the last ten from N(11, 1).
const montgomery: CusumInput = {
  values: [
    9.45, 7.99, 9.29, 11.66, 12.16, 10.18, 8.04, 11.46, 9.2, 10.34, 9.03, 11.47, 10.51, 9.4, 10.08,
    9.37, 10.62, 10.31, 8.52, 10.84, 10.9, 9.33, 12.29, 11.5, 10.6, 11.08, 10.38, 11.62, 11.31,
    10.52,
  ],
  target: 10,
  slack: 0.5,
  decision: 5,
};

describe('cusumChart', () => {
  it('signals where the book does, and says when the change began and where to', () => {
    // Montgomery, Table 9.2 and text: C+ 5.28 with N+ 7 at 29; the shift is put between 22 and 23; new
    // mean 10 + 0.5 + 5.28/7 = 11.25.
    const { high, highCount, signal } = cusumChart(montgomery);
    expectNear(high[28], 5.28, 1e-9);
    expect(highCount[28]).toBe(7);
    expect(signal).toMatchObject({ index: 28, side: 'upper', beganAt: 22 });
    expectNear(signal?.meanNow, 11.25, 0.005);
  });

  it('gives the sums printed in the handbook', () => {
    // NIST/SEMATECH e-Handbook 6.3.2.3 (from memory), two decimals.
    const chart = cusumChart({
      values: [
        324.925, 324.675, 324.725, 324.35, 325.35, 325.225, 324.125, 324.525, 325.225, 324.6,
        324.625, 325.15, 328.325, 327.25,
      ],
      target: 325,
      slack: 0.3175,
      decision: 4.1959,
    });
    const high = [0, 0, 0, 0, 0.03, 0, 0, 0, 0, 0, 0, 0, 3.01, 4.94];
    const low = [0, 0.01, 0, 0.33, 0, 0, 0.56, 0.72, 0.17, 0.25, 0.31, 0, 0, 0];
    expectEachNear(chart.high, high, 0.0051);
    expectEachNear(chart.low, low, 0.0051);
    expect(chart.signal?.index).toBe(13);
  });

  it('is the largest of zero and all sums of the newest values less target and slack', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: -9, max: 9 }), { minLength: 1, maxLength: 15 }),
        (values) => {
          const { high, low } = cusumChart({ values, target: 1, slack: 2, decision: 5 });
          const tails = (sign: number) => {
            let sum = 0;
            return values.toReversed().map((value) => (sum += sign * (value - 1) - 2));
          };
          expect(high.at(-1)).toBe(Math.max(0, ...tails(1)));
          expect(low.at(-1)).toBe(Math.max(0, ...tails(-1)));
        },
      ),
    );
  });

  it('signals on the lower side just as on the upper', () => {
    const mirrored = {
      ...montgomery,
      values: montgomery.values.map((value) => 20 - value),
    };
    const { signal } = cusumChart(mirrored);
    expect(signal).toMatchObject({ index: 28, side: 'lower', beganAt: 22 });
    expectNear(signal?.meanNow, 8.75, 0.005);
  });

  it('counts the values since each sum was last zero, however small the sum', () => {
    // By hand, slack 0.5 about 10: sums 0.1, 0.3, 0, 0 above and 0, 0, 0.25, 0.5 below.
    const values = [10.6, 10.7, 9.25, 9.25];
    const chart = cusumChart({ values, target: 10, slack: 0.5, decision: 5 });
    expectEachNear(chart.high, [0.1, 0.3, 0, 0], 1e-12);
    expectEachNear(chart.low, [0, 0, 0.25, 0.5], 1e-12);
    expect([chart.highCount, chart.lowCount]).toEqual([
      [1, 2, 0, 0],
      [0, 0, 1, 2],
    ]);
  });

  it('does not signal on the decision line itself', () => {
    // By hand: 1.5 + 1.5 + 1.5 = 4.5, then 6.
    const input = { values: [12, 12, 12], target: 10, slack: 0.5, decision: 4.5 };
    expect(cusumChart(input).signal).toBeUndefined();
    expect(cusumChart({ ...input, values: [12, 12, 12, 12] }).signal?.index).toBe(3);
  });

  it('starts at half the decision when it is given a head start', () => {
    // By hand: 2.5 + 2 - 0.5 = 4 and 2.5 - 2 - 0.5 = 0.
    const { high, low, highCount, lowCount } = cusumChart({
      values: [12],
      target: 10,
      slack: 0.5,
      decision: 5,
      headStart: true,
    });
    expect([high, low, highCount, lowCount]).toEqual([[4], [0], [1], [0]]);
  });

  it.each<[string, Partial<CusumInput>, string]>([
    ['no values', { values: [] }, 'at least 1 values, got 0'],
    ['NaN', { values: [1, NaN] }, 'finite values, got NaN at index 1'],
    ['a target that is no number', { target: NaN }, 'finite target, got NaN'],
    ['a slack below zero', { slack: -1 }, 'slack of zero or more, got -1'],
    ['a decision interval of 0', { decision: 0 }, 'decision interval above zero, got 0'],
  ])('refuses %s', (_, broken, message) => {
    expect(() => cusumChart({ ...montgomery, ...broken })).toThrow(message);
  });
});
