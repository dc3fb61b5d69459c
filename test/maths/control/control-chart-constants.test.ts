import { describe, expect, it } from 'vitest';
import { c4 } from '@/lib/maths/control/c4';
import { controlChartConstants } from '@/lib/maths/control/control-chart-constants';
import { medianMovingRangeFactor } from '@/lib/maths/control/median-moving-range-factor';
import { rangeMoments } from '@/lib/maths/control/range-moments';
import { normalCdf } from '@/lib/maths/distributions/normal-cdf';
import { expectNear } from './near';

const pi = Math.PI;

describe('rangeMoments', () => {
  it('gives the exact means of the range of two, three, four and five', () => {
    // Closed forms of normal order statistics (David and Nagaraja, Order Statistics, 3.2).
    const asin = Math.asin(1 / 3);
    const exact = [
      [2, 2 / Math.sqrt(pi)],
      [3, 3 / Math.sqrt(pi)],
      [4, (3 / Math.sqrt(pi)) * (1 + (2 / pi) * asin)],
      [5, (5 / Math.sqrt(pi)) * (0.5 + (3 / pi) * asin)],
    ] as const;
    for (const [n, d2] of exact) expectNear(rangeMoments(n).d2, d2, 1e-12);
  });

  it('gives the exact standard deviations of the range of two and three', () => {
    expectNear(rangeMoments(2).d3, Math.sqrt(2 - 4 / pi), 1e-12);
    expectNear(rangeMoments(3).d3, Math.sqrt(2 + (3 * Math.sqrt(3)) / pi - 9 / pi), 1e-12);
  });

  it('gives the published values for large n', () => {
    // Tippett 1925, means of the range for 50 and 100: 4.49815 and 5.01519 (from memory).
    expectNear(rangeMoments(50).d2, 4.49815, 5e-6);
    expectNear(rangeMoments(100).d2, 5.01519, 5e-6);
  });

  it.each([2, 6, 17, 40, 73, 100])('agrees for n = %i with another integral of the mean', (n) => {
    // E R = integral of 1 - PHI^n - (1 - PHI)^n (the definition by the two extremes), Simpson's rule.
    const step = 1 / 64;
    let sum = 0;
    for (let i = 0; i <= 2 * 9 * 64; i += 1) {
      const below = normalCdf(-9 + i * step);
      const above = normalCdf(9 - i * step);
      sum += (i % 2 === 0 ? 2 : 4) * (1 - below ** n - above ** n);
    }
    expectNear(rangeMoments(n).d2, (sum * step) / 3, 1e-11);
  });

  it('grows steadily in d2 and shrinks steadily in d3 from three on', () => {
    for (let n = 4; n <= 100; n += 1) {
      expect(rangeMoments(n).d2).toBeGreaterThan(rangeMoments(n - 1).d2);
      if (n > 4) expect(rangeMoments(n).d3).toBeLessThan(rangeMoments(n - 1).d3);
    }
  });

  it('cannot be spoiled by changing what it gave before', () => {
    const given = rangeMoments(7);
    given.d2 = 0;
    expect(rangeMoments(7).d2).toBeGreaterThan(2.7);
  });

  it.each([1, 101, 2.5, NaN])('refuses n = %s', (n) => {
    expect(() => rangeMoments(n)).toThrow(`a whole number of values from 2 to 100, got ${n}`);
  });
});

describe('c4', () => {
  it('has the closed forms of gammas of halves', () => {
    expectNear(c4(2), Math.sqrt(2 / pi), 1e-15);
    expectNear(c4(3), Math.sqrt(pi) / 2, 1e-15);
    expectNear(c4(4), 2 * Math.sqrt(2 / (3 * pi)), 1e-15);
    expectNear(c4(5), (3 / 4) * Math.sqrt(pi / 2), 1e-15);
  });

  it('comes to 1 - 1/(4n) - 7/(32 n^2) - 19/(128 n^3) for many', () => {
    // Stirling's series of the ratio of gammas; the next term is below 1e-8 at n = 100.
    const n = 100;
    expectNear(c4(n), 1 - 1 / (4 * n) - 7 / (32 * n * n) - 19 / (128 * n ** 3), 1e-8);
  });

  it.each([1, 101, 3.5])('refuses n = %s', (n) => {
    expect(() => c4(n)).toThrow('a whole number of values from 2 to 100');
  });
});

describe('controlChartConstants', () => {
  it('puts the limits at another multiple of sigma where one is asked', () => {
    // By the formulas of ISO 7870-2 for n = 2 and two sigma: c4 = 0.7978846, d2 = 1.1283792, d3 = 0.8525025.
    const two = controlChartConstants(2, 2);
    expectNear(two.A, Math.SQRT2, 1e-12);
    expectNear(two.A2, 1.879971205973 * (2 / 3), 1e-11);
    expectNear(two.B5, 0, 1e-12);
    expectNear(two.B6, 0.7978846 + 2 * 0.6028103, 1e-6);
    expectNear(two.D2, 1.1283792 + 2 * 0.8525025, 1e-6);
    expectNear(two.D4, 1 + (2 * 0.8525025) / 1.1283792, 1e-6);
    expectNear(two.E2, 2 / 1.1283792, 1e-6);
    expectNear(controlChartConstants(12, 2).D3, 1 - (2 * 0.7784783412) / 3.258455279744, 1e-9);
    for (const multiple of [0, -3, NaN, Infinity]) {
      expect(() => controlChartConstants(5, multiple)).toThrow(
        expect.objectContaining({ code: 'control-chart-constants/not-positive' }),
      );
    }
  });

  // Textbook Table A.22, Factors for Constructing Control Charts, as printed; half a unit of the last
  // digit, and one more unit in the third decimal of the factors old tables made from d2 and d3 of
  // three digits.
  it.each([
    [
      2,
      { A2: 1.88, A3: 2.659, B3: 0, B4: 3.267, D3: 0, D4: 3.267, c4: 0.7979, d2: 1.128, d3: 0.853 },
    ],
    [
      5,
      { A2: 0.577, A3: 1.427, B3: 0, B4: 2.089, D3: 0, D4: 2.114, c4: 0.94, d2: 2.326, d3: 0.864 },
    ],
    [7, { A2: 0.419, A3: 1.182, B3: 0.118, B4: 1.882, D3: 0.076, D4: 1.924, d2: 2.704, d3: 0.833 }],
    [
      10,
      { A2: 0.308, A3: 0.975, B3: 0.284, B4: 1.716, D3: 0.223, D4: 1.777, d2: 3.078, d3: 0.797 },
    ],
    [
      25,
      { A2: 0.153, A3: 0.606, B3: 0.565, B4: 1.435, D3: 0.459, D4: 1.541, d2: 3.931, c4: 0.9896 },
    ],
  ])('rounds to the printed factors of n = %i', (n, printed) => {
    const constants = controlChartConstants(n);
    for (const [name, wanted] of Object.entries(printed)) {
      expectNear(constants[name as keyof typeof constants], wanted, 0.00051);
    }
  });

  it('ties its factors together by their definitions', () => {
    const {
      A,
      A2,
      A3,
      B3,
      B4,
      B5,
      B6,
      c4: c,
      D1,
      D2,
      D3,
      D4,
      d2,
      d3,
      E2,
    } = controlChartConstants(12);
    expectNear(A, 3 / Math.sqrt(12), 1e-15);
    expectNear(A2 * d2, A, 1e-14);
    expectNear(A3 * c, A, 1e-14);
    expectNear(B5, B3 * c, 1e-14);
    expectNear(B6, B4 * c, 1e-14);
    expectNear(B3 + B4, 2, 1e-14);
    expectNear(D2 - D1, 6 * d3, 1e-14);
    expectNear(D3 * d2, D1, 1e-14);
    expectNear(D4 * d2, D2, 1e-14);
    expectNear(E2, 3 / d2, 1e-15);
  });

  it('keeps every lower factor from going below zero', () => {
    for (let n = 2; n <= 100; n += 1) {
      const { B3, B5, D1, D3 } = controlChartConstants(n);
      expect(Math.min(B3, B5, D1, D3)).toBeGreaterThanOrEqual(0);
    }
    expect(controlChartConstants(6).D3).toBe(0);
    expect(controlChartConstants(5).B3).toBe(0);
  });
});

describe('medianMovingRangeFactor', () => {
  it('is the median of the range of two: half of all ranges lie below it', () => {
    // P(|x - y| <= w) = 2 PHI(w / sqrt 2) - 1.
    expectNear(2 * normalCdf(medianMovingRangeFactor() / Math.SQRT2) - 1, 0.5, 1e-14);
    expectNear(medianMovingRangeFactor(), 0.954, 0.0005); // printed in handbooks (from memory)
  });
});
