import { describe, expect, it } from 'vitest';
import { isTrial } from '@/lib/maths/control/is-trial';
import { meanRangeLimits } from '@/lib/maths/control/mean-range-limits';
import { meanSpreadLimits } from '@/lib/maths/control/mean-spread-limits';
import { pooledSpreadLimits } from '@/lib/maths/control/pooled-spread-limits';
import { expectNear } from './near';
import { vane } from './vane';

describe('meanRangeLimits', () => {
  it('gives the published limits of the vane opening', () => {
    // Montgomery and Runger, section 16-4: 33.32, 5.8; 36.67, 29.97; 12.27, 0, with rounded A2, D4.
    const limits = meanRangeLimits(vane);
    expect([limits.count, limits.size, limits.trial]).toEqual([20, 5, false]);
    expectNear(limits.grandMean, 33.32, 1e-9);
    expectNear(limits.rangeMean, 5.8, 1e-9);
    expectNear(limits.means.high, 36.67, 0.006);
    expectNear(limits.means.low, 29.97, 0.006);
    expectNear(limits.ranges.high, 12.27, 0.01);
    expect(limits.ranges.low).toBe(0);
  });

  it('has a sigma of the mean range over d2', () => {
    expectNear(meanRangeLimits(vane).sigma, 5.8 / 2.326, 0.001); // d2 printed 2.326
  });

  it('has a lower limit of the ranges from subgroups of seven on', () => {
    // By hand: ranges 6 and 6, D3(7) printed 0.076.
    const sevens = [
      [1, 2, 3, 4, 5, 6, 7],
      [2, 3, 4, 5, 6, 7, 8],
    ];
    expectNear(meanRangeLimits(sevens).ranges.low, 6 * 0.076, 0.003);
  });
});

describe('meanSpreadLimits', () => {
  it('gives the published limits of the vane opening', () => {
    // Montgomery and Runger, section 16-4: s 2.345, upper limit of s 4.899.
    const limits = meanSpreadLimits(vane);
    expectNear(limits.spreadMean, 2.345, 0.0005);
    expectNear(limits.spreads.high, 4.899, 0.0005);
    expect(limits.spreads.low).toBe(0);
    expectNear(limits.means.high, 33.32 + 1.427 * 2.345, 0.002);
    expectNear(limits.means.low, 33.32 - 1.427 * 2.345, 0.002);
    expectNear(limits.sigma, 2.345 / 0.94, 0.001);
  });
});

describe('pooledSpreadLimits', () => {
  it('weighs means and variances by their readings', () => {
    // By hand: 1 2 3 and 2 4: mean 12/5; s_p^2 = (2 * 1 + 1 * 2) / 3.
    const limits = pooledSpreadLimits([
      [1, 2, 3],
      [2, 4],
    ]);
    expectNear(limits.grandMean, 2.4, 1e-12);
    expectNear(limits.pooledSd, Math.sqrt(4 / 3), 1e-12);
  });

  it('gives each subgroup the limits of its own size', () => {
    // A3(2) 2.659, A3(3) 1.954, B4(2) 3.267, B4(3) 2.568 as printed in handbooks.
    const { subgroups, pooledSd, grandMean } = pooledSpreadLimits([
      [1, 2, 3],
      [2, 4],
    ]);
    expect(subgroups.map(({ size }) => size)).toEqual([3, 2]);
    expectNear(subgroups[0]!.means.high, grandMean + 1.954 * pooledSd, 0.001);
    expectNear(subgroups[1]!.means.low, grandMean - 2.659 * pooledSd, 0.001);
    expectNear(subgroups[0]!.spreads.high, 2.568 * pooledSd, 0.001);
    expectNear(subgroups[1]!.spreads.high, 3.267 * pooledSd, 0.001);
  });

  it('agrees on the mean with the other charts when all sizes are the same', () => {
    expectNear(pooledSpreadLimits(vane).grandMean, meanRangeLimits(vane).grandMean, 1e-12);
  });
});

describe('isTrial', () => {
  it('begins to trust limits at twenty points', () => {
    expect([isTrial(19), isTrial(20)]).toEqual([true, false]);
  });
});

describe.each([
  ['meanRangeLimits', meanRangeLimits],
  ['meanSpreadLimits', meanSpreadLimits],
  ['pooledSpreadLimits', pooledSpreadLimits],
])('%s', (name, limits) => {
  it.each([
    ['no subgroups', [], 'at least 1 subgroups, got 0'],
    ['a subgroup of one', [[1, 2], [3]], 'a whole size of subgroup 1 from 2 to 100, got 1'],
    [
      'NaN',
      [
        [1, 2],
        [3, NaN],
      ],
      'finite readings in subgroup 1, got NaN at index 1',
    ],
  ])('refuses %s', (_, subgroups, message) => {
    expect(() => limits(subgroups)).toThrow(`${name} requires ${message}`);
  });
});

describe.each([
  ['meanRangeLimits', meanRangeLimits],
  ['meanSpreadLimits', meanSpreadLimits],
])('%s', (_, limits) => {
  it('refuses subgroups of different sizes', () => {
    expect(() =>
      limits([
        [1, 2, 3],
        [1, 2],
      ]),
    ).toThrow('one size 3, got 2 at subgroup 1');
  });
});
