import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { andersonDarlingTest } from '@/lib/maths/statistics/anderson-darling-test';
import { bartlettTest } from '@/lib/maths/statistics/bartlett-test';
import { grubbsCritical } from '@/lib/maths/statistics/grubbs-critical';
import { grubbsTest } from '@/lib/maths/statistics/grubbs-test';
import { oneWayAnova } from '@/lib/maths/statistics/one-way-anova';
import { pooledStandardDeviation } from '@/lib/maths/statistics/pooled-standard-deviation';
import { shapiroWilkTest } from '@/lib/maths/statistics/shapiro-wilk-test';
import { spreadOfPairs } from '@/lib/maths/statistics/spread-of-pairs';
import { standardDeviation } from '@/lib/maths/statistics/standard-deviation';
import { expectNear } from '../near';

const uranium = [199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57];

describe('grubbsTest', () => {
  it('finds the wild uranium result', () => {
    // NIST/SEMATECH e-Handbook 1.3.5.17.1: G = 2.4687, critical 2.032 at 5 % (printed digits).
    const found = grubbsTest(uranium, 0.05, 'largest');
    expectNear(found.g, 2.4687, { abs: 1e-4 });
    expectNear(found.critical, 2.032, { abs: 5e-4 });
    expect(found).toMatchObject({ index: 7, isOutlier: true });
  });

  it('looks on the side it is told', () => {
    expect(grubbsTest(uranium, 0.05, 'smallest')).toMatchObject({ index: 0, isOutlier: false });
    const mirrored = uranium.map((value) => -value);
    expect(grubbsTest(mirrored, 0.05, 'smallest')).toMatchObject({ index: 7, isOutlier: true });
    const either = grubbsTest(mirrored, 0.05, 'either');
    expect(either).toMatchObject({ index: 7, isOutlier: true });
    expect(either.critical).toBe(grubbsCritical(8, 0.05, 'two'));
    expect(either.critical).toBeGreaterThan(grubbsCritical(8, 0.05, 'one'));
  });

  it('never gives a statistic above the largest possible one', () => {
    // (n-1)/sqrt n bounds G: any text on the test.
    const lists = fc.array(fc.double({ min: -9, max: 9, noNaN: true }), {
      minLength: 3,
      maxLength: 20,
    });
    fc.assert(
      fc.property(lists, (values) => {
        if (standardDeviation(values) < 1e-6) return;
        const { g } = grubbsTest(values, 0.05, 'either');
        expect(g).toBeLessThanOrEqual((values.length - 1) / Math.sqrt(values.length) + 1e-9);
      }),
    );
  });

  it('refuses too few values and values that do not differ', () => {
    expect(() => grubbsTest([1, 2], 0.05, 'either')).toThrow('at least 3 values, got 2');
    expect(() => grubbsTest([1, 1, 1], 0.05, 'either')).toThrow('values that differ');
    expect(() => grubbsTest([1, 2, NaN], 0.05, 'either')).toThrow('got NaN at index 2');
    expect(() => grubbsCritical(2, 0.05, 'one')).toThrow('got 2');
    expect(() => grubbsCritical(5, 1, 'one')).toThrow('got 1');
  });

  it('comes to the largest distance there can be, (n - 1) / sqrt n, as the significance goes to nothing', () => {
    expect(grubbsCritical(4, 1e-300, 'one')).toBeCloseTo(1.5, 12);
    expect(grubbsCritical(3, 1e-320, 'two')).toBeCloseTo(2 / Math.sqrt(3), 12);
  });
});

describe('shapiroWilkTest', () => {
  // SciPy 1.17.1, stats.shapiro (the same algorithm, another implementation); W to the tolerance of
  // test/reference/normality.json, p to three figures.
  it.each([
    [[1, 2, 4], 0.9642857142857142, 0.6368868450289689],
    [[1, 2, 4, 9], 0.8946862708551955, 0.4051472112475074],
    [[3, 1, 2, 9, 4], 0.8669607110584259, 0.2543338401775038],
    [[3, 1, 2, 9, 4, 5], 0.922385420739622, 0.5227052386224382],
    [[0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10], 0.9683912804626188, 0.869842328207451],
    [
      Array.from({ length: 1000 }, (_, i) => Math.log(i + 1)),
      0.8243047017206865,
      1.038270698953358e-31,
    ],
  ])('agrees with another implementation on %#', (values, w, p) => {
    const found = shapiroWilkTest(values);
    expectNear(found.w, w, { abs: 2e-6 });
    expectNear(found.p, p, { rel: 1e-3 });
  });

  it('does not mind order, unit or zero', () => {
    const moved = [9, 4, 3, 1, 2].map((value) => 1000 + value / 25.4);
    expectNear(shapiroWilkTest(moved).w, shapiroWilkTest([3, 1, 2, 9, 4]).w, { rel: 1e-9 });
  });

  it('refuses too few, too many, and values that do not differ', () => {
    expect(() => shapiroWilkTest([1, 2])).toThrow('got 2');
    expect(() => shapiroWilkTest(new Float64Array(5001))).toThrow('at most 5000 values, got 5001');
    expect(() => shapiroWilkTest([4, 4, 4])).toThrow('values that differ');
  });
});

describe('andersonDarlingTest', () => {
  it('agrees with the values another library tests itself by', () => {
    // SciPy 1.17.1, stats/tests/test_morestats.py: one 0 and nine 1 give A2 = 3.208057.
    const { aSquared } = andersonDarlingTest([0, 1, 1, 1, 1, 1, 1, 1, 1, 1]);
    expectNear(aSquared, 3.208057, { abs: 5e-7 });
  });

  it('lets p fall over all four pieces of its formula', () => {
    const bend = (k: number) => Array.from({ length: 30 }, (_, i) => Math.exp((k * i) / 10));
    const found = [0.2, 0.7, 1, 1.6, 3].map((k) => andersonDarlingTest(bend(k)));
    for (let i = 1; i < found.length; i += 1) {
      expect(found[i]!.aSquaredStar).toBeGreaterThan(found[i - 1]!.aSquaredStar);
      expect(found[i]!.p).toBeLessThan(found[i - 1]!.p);
    }
    for (const { p } of found) expect(p > 0 && p <= 1).toBe(true);
  });

  it('has an answer where the normal probability itself vanishes', () => {
    const wild = [...Array.from({ length: 3000 }, (_, i) => i / 3000), 1e6];
    const { aSquared, p } = andersonDarlingTest(wild);
    expect(Number.isFinite(aSquared)).toBe(true);
    expectNear(p, 3.7e-24, { rel: 0.05 });
  });

  it('refuses too few values and values that do not differ', () => {
    expect(() => andersonDarlingTest([1, 2])).toThrow('got 2');
    expect(() => andersonDarlingTest([1, 1, 1, 1])).toThrow('values that differ');
  });
});

describe('pooling', () => {
  it('weighs every set by its degrees of freedom', () => {
    // By hand: (4 x 1 + 2 x 4)/6 = 2.
    const pooled = pooledStandardDeviation([
      { sd: 1, degrees: 4 },
      { sd: 2, degrees: 2 },
      { sd: 99, degrees: 0 },
    ]);
    expectNear(pooled.sd, Math.SQRT2, { rel: 1e-15 });
    expect(pooled.degrees).toBe(6);
  });

  it('from pairs is the same as pooling the two-reading sets', () => {
    const differences = [0.001, -0.002, 0.002];
    const sets = differences.map((d) => ({ sd: Math.abs(d) / Math.SQRT2, degrees: 1 }));
    expectNear(spreadOfPairs(differences).sd, pooledStandardDeviation(sets).sd, { rel: 1e-14 });
    expect(spreadOfPairs(differences).degrees).toBe(3);
  });

  it("is warned by Bartlett's test", () => {
    // SciPy 1.17.1, stats.bartlett([1,2,3,4,6], [2,2.5,2.2,2.9], [5,1,7]).
    const found = bartlettTest([
      { sd: 1.9235384061671346, degrees: 4 },
      { sd: 0.39157800414902433, degrees: 3 },
      { sd: 3.055050463303893, degrees: 2 },
    ]);
    expectNear(found.statistic, 6.770608903615237, { rel: 1e-12 });
    expectNear(found.p, 0.03386732980613962, { rel: 1e-11 });
  });

  it('refuses what it cannot stand on', () => {
    expect(() => pooledStandardDeviation([])).toThrow('a set with two readings');
    expect(() => pooledStandardDeviation([{ sd: -1, degrees: 2 }])).toThrow(
      'got -1 and 2 at index 0',
    );
    expect(() => spreadOfPairs([])).toThrow('got 0');
    expect(() => bartlettTest([{ sd: 1, degrees: 2 }])).toThrow('got 1');
    const still = [
      { sd: 1, degrees: 2 },
      { sd: 0, degrees: 2 },
    ];
    expect(() => bartlettTest(still)).toThrow('got none at index 1');
  });
});

describe('oneWayAnova', () => {
  it('agrees with another library on groups of different size', () => {
    // SciPy 1.17.1, stats.f_oneway([1,2,3], [2,3,4,5], [6,7]).
    const found = oneWayAnova([
      [1, 2, 3],
      [2, 3, 4, 5],
      [6, 7],
    ]);
    expectNear(found.f!, 9.8, { rel: 1e-14 });
    expectNear(found.p!, 0.012874603271484375, { rel: 1e-12 });
    expect([found.betweenDegrees, found.withinDegrees]).toEqual([2, 6]);
  });

  it('does not change when everything is moved by 10^12', () => {
    const groups = [
      [1, 2, 3],
      [2, 3, 5],
    ];
    const moved = groups.map((group) => group.map((value) => value + 1e12));
    expect(oneWayAnova(moved)).toEqual(oneWayAnova(groups));
  });

  it('has no ratio when nothing varies within', () => {
    const found = oneWayAnova([
      [1, 1],
      [2, 2],
    ]);
    expect(found).toMatchObject({ f: undefined, p: undefined, rSquared: 1, residualSd: 0 });
    const alike = oneWayAnova([
      [1, 1],
      [1, 1],
    ]);
    expect(alike).toMatchObject({ f: undefined, rSquared: undefined });
  });

  it('refuses too few groups, empty groups and no repeats', () => {
    expect(() => oneWayAnova([[1, 2]])).toThrow('at least two groups, got 1');
    expect(() => oneWayAnova([[1, 2], []])).toThrow('at least one value, got 0');
    expect(() => oneWayAnova([[1], [2]])).toThrow('two values or more, got none');
  });
});
