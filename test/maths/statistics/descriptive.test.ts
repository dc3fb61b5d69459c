import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lagOneAutocorrelation } from '@/lib/maths/statistics/lag-one-autocorrelation';
import { mean } from '@/lib/maths/statistics/mean';
import { meanInterval } from '@/lib/maths/statistics/mean-interval';
import { median } from '@/lib/maths/statistics/median';
import { medianAbsoluteDeviation } from '@/lib/maths/statistics/median-absolute-deviation';
import { orderStatistic } from '@/lib/maths/statistics/order-statistic';
import { quantile, type QuantileRule } from '@/lib/maths/statistics/quantile';
import { shape } from '@/lib/maths/statistics/shape';
import { spreadInterval } from '@/lib/maths/statistics/spread-interval';
import { standardDeviation } from '@/lib/maths/statistics/standard-deviation';
import { standardError } from '@/lib/maths/statistics/standard-error';
import { variance } from '@/lib/maths/statistics/variance';
import { expectNear } from '../near';

const five = [3.1, 4.2, 2.2, 9.7, 3.3];
const readings = fc.array(fc.double({ min: -1e3, max: 1e3, noNaN: true }), {
  minLength: 2,
  maxLength: 40,
});

/** Places of the 256 of n values that stand for all. */
const evenlyPicked = (n: number) =>
  new Set(Array.from({ length: 256 }, (_, k) => Math.floor(((k + 0.5) * n) / 256)));

describe('mean, variance and standard deviation', () => {
  it('keep their digits at a large offset', () => {
    // NIST StRD NumAcc4: 10000000.2 and then .1, .3 in turn; certified mean 10000000.2, sd 0.1.
    // The decimals themselves are only known to 1e-9 as doubles: 5.6e-9 of the spread.
    const data = Array.from({ length: 1001 }, (_, i) => 1e7 + (i === 0 ? 0.2 : i % 2 ? 0.1 : 0.3));
    expectNear(mean(data), 10000000.2, { rel: 1e-15 });
    expectNear(standardDeviation(data), 0.1, { rel: 5.6e-8 });
    expectNear(lagOneAutocorrelation(data), -0.999, { rel: 9.3e-11 });
  });

  it('work on any number of values', () => {
    // The sum runs in four strands; every remainder of four has to come out.
    for (let n = 1; n <= 9; n += 1) {
      const values = Array.from({ length: n }, (_, i) => i + 1);
      expect(mean(values)).toBe((n + 1) / 2);
      if (n > 1) expectNear(variance(values), (n * (n + 1)) / 12, { rel: 1e-15 });
    }
  });

  it('come out the same for many values as by exact sums, whatever their order and offset', () => {
    // Whole numbers k, 0 to 19999, times 2^-20 and moved by an offset: exact as doubles, so mean and
    // variance follow from the sums of k and k^2. Two roundings of each are allowed, and for the
    // variance those of 20000 squares, which part as the root of their number: 150 x 1.1e-16.
    const n = 20_000;
    const wantedVariance = (n * (n + 1)) / 12 / 2 ** 40;
    const orders: Record<string, (i: number) => number> = {
      rising: (i) => i,
      dealt: (i) => (i * 7919) % n,
      'the largest where none is picked': (i) => (i % 78 === 39 ? 0 : i),
    };
    for (const [name, at] of Object.entries(orders)) {
      for (const offset of [0, 25, -1e6]) {
        const values = Float64Array.from({ length: n }, (_, i) => offset + at(i) / 2 ** 20);
        const sum = values.reduce((all, x) => all + Math.round((x - offset) * 2 ** 20), 0);
        expectNear(mean(values), offset + sum / n / 2 ** 20, { rel: 2.3e-16, abs: 1e-18 });
        if (name.startsWith('the')) continue;
        expectNear(variance(values), wantedVariance, { rel: 1.7e-14 });
      }
    }
  });

  it('keep their digits where a few hundred of many values say nothing of the rest', () => {
    // 20000 values, 256 evenly picked: all of them 0, the others 1e6 and 1e6 + 1 in turn, so the mean
    // and the squares follow from three counts.
    const n = 20_000;
    const picked = evenlyPicked(n);
    let [low, high] = [0, 0];
    const values = Float64Array.from({ length: n }, (_, i) => {
      if (picked.has(i)) return 0;
      if (i % 2 === 0) {
        low += 1;
        return 1e6;
      }
      high += 1;
      return 1e6 + 1;
    });
    const sum = low * 1e6 + high * (1e6 + 1);
    expectNear(mean(values), sum / n, { rel: 2.3e-16 });
    // (n sum x^2 - (sum x)^2)/(n (n - 1)) in whole numbers. Squares that are nearly alike round the
    // same way again and again: at worst once for each of the 5000 additions of a strand.
    const squares = BigInt(low) * 10n ** 12n + BigInt(high) * 1_000_001n ** 2n;
    const wanted = Number(BigInt(n) * squares - BigInt(sum) ** 2n) / (n * (n - 1));
    expectNear(variance(values), wanted, { rel: 5000 * 1.1e-16 });
  });

  it('have a mean right to the last digit where the sample misleads and the sums round', () => {
    // As before, the others 1e6 and some 2^-30: the exact sum in whole numbers. Two roundings.
    const n = 20_000;
    const picked = evenlyPicked(n);
    let sum = 0n;
    const values = Float64Array.from({ length: n }, (_, i) => {
      if (picked.has(i)) return 0;
      const parts = (i * 7919) % 1_000_003;
      sum += 1_000_000n * 2n ** 30n + BigInt(parts);
      return 1e6 + parts / 2 ** 30;
    });
    expectNear(mean(values), Number(sum) / n / 2 ** 30, { rel: 2.3e-16 });
  });

  it('stay exact for many values all alike', () => {
    expect(standardDeviation(new Float64Array(20_000).fill(0.1))).toBe(0);
    expect(mean(new Float64Array(20_000).fill(0.1))).toBe(0.1);
  });

  it('refuse many values whose sum is too large even for a sample of them', () => {
    const large = new Float64Array(20_000).fill(1.7e308);
    expect(() => mean(large)).toThrow('whose sum is below');
    expect(() => standardDeviation(large)).toThrow('whose sum is below');
  });

  it('refuse among many values those that are no numbers, and say where', () => {
    for (const odd of [NaN, Infinity, -Infinity]) {
      for (const at of [0, 39, 19_999]) {
        const values = new Float64Array(20_000).fill(1);
        values[at] = odd;
        expect(() => mean(values)).toThrow(`got ${odd} at index ${at}`);
        expect(() => standardDeviation(values)).toThrow(`got ${odd} at index ${at}`);
      }
    }
  });

  it('take typed arrays as well', () => {
    expect(mean(Float64Array.of(1, 2, 6))).toBe(3);
    expect(standardDeviation(Float64Array.of(2, 4))).toBeCloseTo(Math.SQRT2, 15);
  });

  it('have a spread of exactly nothing for values all alike', () => {
    expect(standardDeviation([0.1, 0.1, 0.1])).toBe(0);
    expect(variance([25.000013, 25.000013])).toBe(0);
  });

  it('move with the values and scale with them', () => {
    fc.assert(
      fc.property(readings, fc.double({ min: 0.1, max: 10, noNaN: true }), (values, k) => {
        const moved = values.map((value) => k * value + 5);
        expectNear(mean(moved), k * mean(values) + 5, { abs: 1e-9 });
        expectNear(standardDeviation(moved), k * standardDeviation(values), { abs: 1e-9 });
      }),
    );
  });

  it('give the standard error as s over root n', () => {
    // By hand: mean 4, squares about it 8, s = sqrt(8/3).
    expectNear(standardError([2, 4, 4, 6]), Math.sqrt(8 / 3) / 2, { rel: 1e-15 });
  });

  it('refuse too few values and values that are no numbers, and say where', () => {
    expect(() => mean([])).toThrow('at least one value, got 0');
    expect(() => mean([1, NaN, 3])).toThrow('got NaN at index 1');
    expect(() => mean([1, 2, Infinity])).toThrow('got Infinity at index 2');
    expect(() => mean([1e308, 1e308])).toThrow('whose sum is below');
    expect(() => standardDeviation([1e308, 1e308])).toThrow('whose sum is below');
    expect(() => variance([1])).toThrow('at least 2 values, got 1');
    expect(() => standardDeviation([1])).toThrow('at least 2 values, got 1');
    expect(() => standardDeviation([1, NaN])).toThrow('got NaN at index 1');
    expect(() => standardError([1])).toThrow('at least 2 values, got 1');
  });
});

describe('lagOneAutocorrelation', () => {
  it('is minus one half for a value and its neighbours in turn', () => {
    // NIST StRD NumAcc1: 10000001, 10000003, 10000002; certified -0.5 exactly.
    expect(lagOneAutocorrelation([10000001, 10000003, 10000002])).toBe(-0.5);
  });

  it('refuses values that do not differ', () => {
    expect(() => lagOneAutocorrelation([1, 1, 1])).toThrow('values that differ');
    expect(() => lagOneAutocorrelation([1])).toThrow('got 1');
  });
});

describe('median and median absolute deviation', () => {
  it('take the middle, or the mean of the two middle ones', () => {
    expect(median([3, 1, 2])).toBe(2);
    expect(median([3, 1, 2, 10])).toBe(2.5);
    expect(median([7])).toBe(7);
  });

  it('leave the values as they were', () => {
    const values = [3, 1, 2];
    median(values);
    quantile(values, 0.3, 'mode');
    expect(values).toEqual([3, 1, 2]);
  });

  it('hardly move for one wild value', () => {
    // By hand: median 2, distances 1 1 0 0 2 4 7, their median 1.
    expect(medianAbsoluteDeviation([1, 1, 2, 2, 4, 6, 9])).toBe(1);
    expect(medianAbsoluteDeviation([1, 1, 2, 2, 4, 6, 9e9])).toBe(1);
  });

  it('refuse nothing and no numbers', () => {
    expect(() => median([])).toThrow('got 0');
    expect(() => median([1, NaN])).toThrow('got NaN at index 1');
  });
});

describe('orderStatistic', () => {
  it('finds what sorting finds, with ties and without', () => {
    const lists = fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 1, maxLength: 60 });
    fc.assert(
      fc.property(lists, fc.nat(), (values, any) => {
        const k = any % values.length;
        const sorted = [...values].sort((a, b) => a - b);
        expect(orderStatistic(Float64Array.from(values), k)).toBe(sorted[k]);
      }),
    );
  });
});

describe('quantile', () => {
  // NumPy 2.4.6, numpy.quantile with hazen, weibull, linear and median_unbiased.
  it.each([
    ['midpoint', [2.2, 2.875, 3.3, 9.7]],
    ['weibull', [2.2, 2.65, 3.3, 9.7]],
    ['mode', [2.56, 3.1, 3.3, 7.5]],
    ['median-unbiased', [2.2, 2.8, 3.3, 9.7]],
  ] as [QuantileRule, number[]][])('stands where the %s rule puts it', (rule, wanted) => {
    [0.1, 0.25, 0.5, 0.9].forEach((p, i) => {
      expectNear(quantile(five, p, rule), wanted[i]!, { rel: 1e-14 });
    });
  });

  it('never goes beyond the ends and rises with p', () => {
    const rules = fc.constantFrom<QuantileRule>('midpoint', 'weibull', 'mode', 'median-unbiased');
    const part = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(readings, part, part, rules, (values, p, q, rule) => {
        const [low, high] = [Math.min(p, q), Math.max(p, q)].map((at) =>
          quantile(values, at, rule),
        );
        expect(low!).toBeGreaterThanOrEqual(Math.min(...values));
        expect(high!).toBeLessThanOrEqual(Math.max(...values));
        expect(high! - low!).toBeGreaterThanOrEqual(-1e-12);
      }),
    );
  });

  it('refuses parts outside 0 to 1', () => {
    expect(() => quantile(five, 1.1, 'mode')).toThrow('got 1.1');
    expect(() => quantile(five, NaN, 'mode')).toThrow('got NaN');
    expect(() => quantile([], 0.5, 'mode')).toThrow('got 0');
  });
});

describe('shape', () => {
  it('agrees with another library on both forms of skewness and kurtosis', () => {
    // SciPy 1.17.1, stats.skew and stats.kurtosis with bias True and False; printed digits kept.
    const { g1, G1, g2, G2 } = shape(five);
    expectNear(g1, 1.292751736446467, { rel: 1e-13 });
    expectNear(g2, -0.018605497242399682, { abs: 1e-13 });
    expectNear(G1!, 1.9271205071501283, { rel: 1e-13 });
    expectNear(G2!, 3.9255780110304004, { rel: 1e-12 });
  });

  it('leaves the corrected forms undefined where there are too few values', () => {
    expect(shape([1, 2])).toMatchObject({ g1: 0, G1: undefined, G2: undefined });
    expect(shape([1, 2, 3]).G1).toBe(0);
    expect(shape([1, 2, 3]).G2).toBeUndefined();
  });

  it('is mirrored with the values', () => {
    fc.assert(
      fc.property(readings, (values) => {
        if (standardDeviation(values) < 1e-3) return;
        const [one, other] = [shape(values), shape(values.map((value) => -value))];
        expectNear(one.g1, -other.g1, { abs: 1e-9 });
        expectNear(one.g2, other.g2, { abs: 1e-9 });
      }),
    );
  });

  it('refuses values that do not differ', () => {
    expect(() => shape([2, 2, 2])).toThrow('values that differ');
    expect(() => shape([2])).toThrow('got 1');
  });
});

describe('intervals', () => {
  it('put the mean between t standard errors', () => {
    // t_0.975(2) = 4.303: JCGM 100 table G.2 (4.30); test/reference/quantiles.json to 16 digits.
    const { low, high } = meanInterval({ mean: 10.003, sd: 0.001, n: 3 }, 0.95);
    expectNear(high - 10.003, (4.302652729749462 * 0.001) / Math.sqrt(3), { rel: 1e-9 });
    expectNear(low + high, 20.006, { rel: 1e-15 });
  });

  it('put sigma between the chi-square points', () => {
    // chi2_0.975(9) = 19.02276779864163, chi2_0.025(9) = 2.700389499980358: test/reference/quantiles.json.
    const { low, high } = spreadInterval(0.001, 9, 0.95);
    expectNear(low, 0.001 * Math.sqrt(9 / 19.02276779864163), { rel: 1e-12 });
    expectNear(high, 0.001 * Math.sqrt(9 / 2.700389499980358), { rel: 1e-12 });
  });

  it('grow with the confidence', () => {
    const sample = { mean: 0, sd: 1, n: 10 };
    expect(meanInterval(sample, 0.99).high).toBeGreaterThan(meanInterval(sample, 0.95).high);
    expect(spreadInterval(1, 9, 0.99).high).toBeGreaterThan(spreadInterval(1, 9, 0.95).high);
  });

  it('refuse what they cannot stand on', () => {
    expect(() => meanInterval({ mean: 0, sd: 1, n: 1 }, 0.95)).toThrow('got 1 and 1');
    expect(() => meanInterval({ mean: 0, sd: 1, n: 5 }, 1)).toThrow('confidence above 0');
    expect(() => spreadInterval(1, 0, 0.95)).toThrow('got 1 and 0');
    expect(() => spreadInterval(1, 5, 0)).toThrow('got 0');
  });
});
