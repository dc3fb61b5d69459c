import { describe, expect, it } from 'vitest';
import { studentTQuantile } from '@/lib/maths/distributions/student-t-quantile';
import { adaptiveMonteCarlo } from '@/lib/maths/metrology/adaptive-monte-carlo';
import { coverageInterval } from '@/lib/maths/metrology/coverage-interval';
import type { Distribution } from '@/lib/maths/metrology/distribution';
import { distributionMoments } from '@/lib/maths/metrology/distribution-moments';
import { monteCarlo } from '@/lib/maths/metrology/monte-carlo';
import { numericalTolerance } from '@/lib/maths/metrology/numerical-tolerance';
import { propagationAgrees } from '@/lib/maths/metrology/propagation-agrees';
import { sampler } from '@/lib/maths/metrology/sampler';
import { seededRandom } from '@/lib/maths/metrology/seeded-random';
import { mean } from '@/lib/maths/statistics/mean';
import { standardDeviation } from '@/lib/maths/statistics/standard-deviation';
import { expectNear } from '../near';

const draws = 200_000;
const first = ([x]: readonly number[]) => x!;
const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);
const normal = { shape: 'normal', mean: 0, sd: 1 } as const;
const run = (input: Distribution, coverage = 0.9) =>
  monteCarlo(first, [input], { draws, seed: 7, coverage });

describe('seededRandom', () => {
  it('gives the same sequence for the same seed, always', () => {
    // Pinned when written, so that a kept seed repeats a kept result; not a published run.
    const next = seededRandom(1);
    expect([next(), next(), next()]).toEqual(pinned);
    const again = seededRandom(1);
    expect([again(), again(), again()]).toEqual(pinned);
    expect(seededRandom(2)()).not.toBe(pinned[0]);
  });

  it('fills 0 to 1 evenly and without memory', () => {
    const next = seededRandom(42);
    const values = Float64Array.from({ length: 100_000 }, () => next());
    // Standard deviations of these counts and means are 95, 0.0009 and 0.0032; five of each.
    const counts = Array.from({ length: 10 }, () => 0);
    for (const value of values) counts[Math.floor(value * 10)]! += 1;
    for (const count of counts) expectNear(count, 10_000, { abs: 475 });
    expectNear(mean(values), 0.5, { abs: 0.0046 });
    const pairs = values.slice(1).map((value, i) => (value - 0.5) * (values[i]! - 0.5) * 12);
    expectNear(mean(pairs), 0, { abs: 0.016 });
    expect(Math.min(...values.slice(0, 50_000))).toBeGreaterThan(0);
  });

  it.each([-1, 0.5, NaN, 2 ** 32])('refuses the seed %s', (seed) => {
    expect(() => seededRandom(seed)).toThrow(`got ${seed}`);
  });
});

const pinned = [0.5686060004521735, 0.889393932968683, 0.4705824253465033];

describe('sampler', () => {
  // Mean and standard deviation of each shape: JCGM 101:2008 6.4. Five standard errors are allowed:
  // 5/sqrt(200000) = 1.1 % of sigma for the mean, and at most 2 % for sigma itself.
  it.each<[string, Distribution, number, number]>([
    ['normal', { shape: 'normal', mean: 3, sd: 2 }, 3, 2],
    ['rectangular', { shape: 'rectangular', low: 1, high: 4 }, 2.5, 3 / Math.sqrt(12)],
    ['triangular', { shape: 'triangular', low: 1, high: 4 }, 2.5, 1.5 / Math.sqrt(6)],
    ['arcsine', { shape: 'arcsine', low: 1, high: 4 }, 2.5, 1.5 / Math.SQRT2],
    [
      'curvilinear trapezoid',
      { shape: 'curvilinear-trapezoid', low: -1, high: 3, doubt: 0.8 },
      1,
      Math.sqrt((2 * 2) / 3 + 0.8 ** 2 / 9),
    ],
    ['t', { shape: 't', degrees: 9, centre: 5, scale: 2 }, 5, 2 * Math.sqrt(9 / 7)],
  ])('draws %s values with the right middle and spread', (_, distribution, middle, spread) => {
    const { value, u } = run(distribution);
    expectNear(value, middle, { abs: 0.0112 * spread });
    expectNear(u, spread, { rel: 0.02 });
  });

  it.each([1, 1.5, 3, 18])('draws t with the right tails at %s degrees of freedom', (degrees) => {
    const { symmetric } = run({ shape: 't', degrees, centre: 0, scale: 1 }, 0.9);
    const wanted = studentTQuantile(0.95, degrees);
    // Standard error of that quantile: sqrt(0.95 x 0.05/200000)/density, below 1.3 %; five of it.
    expectNear(symmetric.high, wanted, { rel: 0.065 });
    expectNear(symmetric.low, -wanted, { rel: 0.065 });
  });

  it('keeps inside the ends of a shape that has ends', () => {
    const ends = (input: Distribution) => {
      const { sorted } = run(input);
      return [sorted[0]!, sorted.at(-1)!];
    };
    for (const shape of ['rectangular', 'triangular', 'arcsine'] as const) {
      const [low, high] = ends({ shape, low: 1, high: 4 });
      expect(low! >= 1 && high! <= 4).toBe(true);
    }
    const [low, high] = ends({ shape: 'curvilinear-trapezoid', low: 0, high: 2, doubt: 0.5 });
    expect(low! > -0.5 && low! < -0.4 && high! < 2.5 && high! > 2.4).toBe(true);
  });

  it('refuses parameters that make no distribution', () => {
    const make = (input: Distribution) => () => sampler(input, seededRandom(1));
    expect(make({ shape: 'normal', mean: 0, sd: -1 })).toThrow('got 0, -1');
    expect(make({ shape: 'rectangular', low: 2, high: 1 })).toThrow('got 2, 1');
    expect(make({ shape: 't', degrees: 0, centre: 0, scale: 1 })).toThrow('got 0, 0, 1');
    expect(make({ shape: 'curvilinear-trapezoid', low: 0, high: 2, doubt: 1.1 })).toThrow('1.1');
    expect(make({ shape: 'normal', mean: NaN, sd: 1 })).toThrow('NaN');
  });
});

describe('monteCarlo', () => {
  it('gives the same result for the same seed, to the last digit', () => {
    const options = { draws: 1000, seed: 3, coverage: 0.95 };
    const [one, other] = [1, 2].map(() => monteCarlo(sum, [normal, normal], options));
    expect(one).toEqual(other);
    expect(one).toMatchObject({ draws: 1000, seed: 3, generator: 'xoshiro128**' });
    const changed = monteCarlo(sum, [normal, normal], { ...options, seed: 4 });
    expect(changed.value).not.toBe(one!.value);
  });

  it('shortens the interval of a lopsided result', () => {
    // Exponential: shortest 95 % interval is 0 to 3.00 (-ln 0.05), symmetric 0.0253 to 3.689 (definition).
    const exponential = ([x]: readonly number[]) => -Math.log(x!);
    const input = [{ shape: 'rectangular', low: 0, high: 1 } as const];
    const found = monteCarlo(exponential, input, { draws, seed: 11, coverage: 0.95 });
    expectNear(found.shortest.high, -Math.log(0.05), { rel: 0.03 });
    expectNear(found.shortest.low, 0, { abs: 0.01 });
    expectNear(found.symmetric.high, -Math.log(0.025), { rel: 0.03 });
    expectNear(found.symmetric.low, -Math.log(0.975), { rel: 0.05 });
  });

  it('refuses silly numbers of draws and models without a value', () => {
    const options = { draws: 10, seed: 1, coverage: 0.95 };
    expect(() => monteCarlo(sum, [normal], options)).toThrow('got 10');
    const some = { ...options, draws: 1000 };
    expect(() => monteCarlo(([x]) => Math.sqrt(x!), [normal], some)).toThrow('got NaN at -');
  });
});

describe('coverageInterval', () => {
  const sorted = Float64Array.from({ length: 100 }, (_, i) => i + 1);

  it('counts from the ends as the supplement says', () => {
    // JCGM 101 7.7: M = 100, p = 0.95: q = 95, r = (100-95+1)/2 = 3: from the 3rd to the 98th.
    expect(coverageInterval(sorted, 0.95, 'symmetric')).toEqual({ low: 3, high: 98 });
    expect(coverageInterval(sorted, 0.9, 'symmetric')).toEqual({ low: 5, high: 95 });
  });

  it('takes the first of several that are equally short, and the shortest of all', () => {
    expect(coverageInterval(sorted, 0.95, 'shortest')).toEqual({ low: 1, high: 96 });
    const bunched = sorted.map((x) => x * x);
    expect(coverageInterval(bunched, 0.5, 'shortest')).toEqual({ low: 1, high: 51 * 51 });
    const other = bunched.map((x) => -x).reverse();
    expect(coverageInterval(other, 0.5, 'shortest').high).toBe(-1);
  });

  it('refuses parts that leave nothing', () => {
    expect(() => coverageInterval(sorted, 1, 'shortest')).toThrow('got 1');
    expect(() => coverageInterval(sorted, 0.999, 'shortest')).toThrow('got 100');
  });
});

describe('adaptiveMonteCarlo', () => {
  it('goes on until two figures of u stand still', () => {
    // JCGM 101 9.2.2: four standard normals, u = 2.0, 95 % at -+3.92 (printed).
    const found = adaptiveMonteCarlo(sum, [normal, normal, normal, normal], {
      seed: 3,
      coverage: 0.95,
    });
    expect(found.isStable).toBe(true);
    expect(found.tolerance).toBe(0.05);
    expect(found.draws % 10_000).toBe(0);
    expect(found.draws).toBeGreaterThanOrEqual(20_000);
    expectNear(found.u, 2, { abs: 0.05 });
    expectNear(found.symmetric.high, 3.92, { abs: 0.05 });
  });

  it('needs fewer draws for one figure and says when it ran out', () => {
    const inputs = [normal, normal, normal, normal];
    const quick = adaptiveMonteCarlo(sum, inputs, { seed: 22, coverage: 0.95, figures: 1 });
    expect(quick.tolerance).toBe(0.5);
    expect(quick.draws).toBe(20_000);
    const short = adaptiveMonteCarlo(sum, inputs, { seed: 3, coverage: 0.95, drawsMax: 30_000 });
    expect(short.draws).toBe(30_000);
    expect(short.isStable).toBe(false);
  });

  it('takes larger blocks for a coverage close to one', () => {
    const found = adaptiveMonteCarlo(first, [normal], { seed: 1, coverage: 0.995, figures: 1 });
    expect(found.draws % 20_000).toBe(0);
  });

  it('refuses a result that does not spread', () => {
    const still = { shape: 'normal', mean: 1, sd: 0 } as const;
    expect(() => adaptiveMonteCarlo(first, [still], { seed: 1, coverage: 0.95 })).toThrow(
      'one result',
    );
    expect(() => adaptiveMonteCarlo(first, [normal], { seed: 1, coverage: 1 })).toThrow('got 1');
  });
});

describe('numericalTolerance', () => {
  it('is half a unit of the last figure kept', () => {
    // JCGM 101 7.9.2, examples: u = 0.000 35 g gives 0.000 005 g; u = 2 K to one figure gives 0.5 K.
    expectNear(numericalTolerance(0.00035, 2), 0.000005, { rel: 1e-12 });
    expect(numericalTolerance(2, 1)).toBe(0.5);
    expect(numericalTolerance(35.8, 2)).toBe(0.5);
    expect(numericalTolerance(99.6, 2)).toBe(5);
    expect(() => numericalTolerance(0, 2)).toThrow('got 0');
  });

  it('lets the law of propagation stand or not', () => {
    // JCGM 101 9.2.3: rectangular inputs, -+3.92 against -+3.88, tolerance 0.05: both ends within.
    const propagated = { value: 0, u: 2, expanded: 3.92 };
    expect(propagationAgrees(propagated, { low: -3.88, high: 3.88 })).toBe(true);
    expect(propagationAgrees(propagated, { low: -3.86, high: 3.88 })).toBe(false);
    expect(propagationAgrees(propagated, { low: -3.88, high: 3.99 })).toBe(false);
  });
});

describe('distributionMoments', () => {
  it('are those of many draws', () => {
    const shapes: Distribution[] = [
      { shape: 'normal', mean: 3, sd: 2 },
      { shape: 'rectangular', low: 1, high: 4 },
      { shape: 'triangular', low: 1, high: 4 },
      { shape: 'arcsine', low: 1, high: 4 },
    ];
    for (const shape of shapes) {
      const { value, u } = distributionMoments(shape);
      expectNear(standardDeviation(run(shape).sorted), u, { rel: 0.02 });
      expectNear(run(shape).value, value, { abs: 0.0112 * u });
    }
  });

  it('bring the degrees of freedom the guide gives', () => {
    // JCGM 100 H.1.3.4 and H.1.3.5: 10 % reliability is 50 degrees of freedom, 50 % is 2.
    const ends = { shape: 'curvilinear-trapezoid', low: -1, high: 1 } as const;
    expectNear(distributionMoments({ ...ends, doubt: 0.1 }).degrees, 50, { rel: 1e-12 });
    expectNear(distributionMoments({ ...ends, doubt: 0.5 }).degrees, 2, { rel: 1e-12 });
    expect(distributionMoments({ ...ends, doubt: 0 }).degrees).toBe(Infinity);
    const repeats = { shape: 't', degrees: 5, centre: 1, scale: 0.2 } as const;
    expect(distributionMoments(repeats)).toEqual({ value: 1, u: 0.2, degrees: 5 });
    expect(() => distributionMoments({ shape: 'rectangular', low: 2, high: 1 })).toThrow(
      'in order',
    );
  });
});
