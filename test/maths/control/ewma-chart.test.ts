import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ewmaChart, type EwmaInput } from '@/lib/maths/control/ewma-chart';
import { expectEachNear, expectNear } from './near';

// NIST/SEMATECH e-Handbook 6.3.2.4: data, averages to two decimals and limits as printed.
const handbook: EwmaInput = {
  values: [
    52, 47, 53, 49.3, 50.1, 47, 51, 50.1, 51.2, 50.5, 49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6,
    52.4, 53.6, 52.1,
  ],
  lambda: 0.3,
  centre: 50,
  sigma: 2.0539,
  multiple: 3,
  limits: 'settled',
};

describe('ewmaChart', () => {
  it('gives the averages printed in the handbook', () => {
    const printed = [
      50.6, 49.52, 50.56, 50.18, 50.16, 49.21, 49.75, 49.85, 50.26, 50.33, 50.11, 49.36, 49.52,
      50.05, 49.38, 49.92, 50.73, 51.23, 51.94, 51.99,
    ];
    expectEachNear(ewmaChart(handbook).averages, printed, 0.0051);
  });

  it('gives the settled limits printed in the handbook', () => {
    const { upper, lower, outside } = ewmaChart(handbook);
    for (const limit of upper) expectNear(limit, 52.5884, 0.0002);
    for (const limit of lower) expectNear(limit, 47.4115, 0.0002);
    expect(outside).toEqual([]);
  });

  it('starts its limits at L lambda sigma and widens them to the settled ones', () => {
    // By the formula at i = 1: sqrt(lambda / (2 - lambda) (1 - (1 - lambda)^2)) = lambda.
    const { upper, lower } = ewmaChart({ ...handbook, limits: 'from the start' });
    expectNear(upper[0]! - 50, 3 * 0.3 * 2.0539, 1e-12);
    expectNear(50 - lower[0]!, 3 * 0.3 * 2.0539, 1e-12);
    // At i = 2 the variance is lambda^2 (1 + (1 - lambda)^2): two weights, worked by hand.
    expectNear(upper[1]! - 50, 3 * 2.0539 * 0.3 * Math.sqrt(1 + 0.49), 1e-12);
    upper.slice(1).forEach((limit, i) => expect(limit).toBeGreaterThan(upper[i]!));
    expectNear(upper.at(-1)!, ewmaChart(handbook).upper[0]!, 1e-5);
  });

  it('is the weighted sum of all values before', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: -50, max: 50 }), { minLength: 1, maxLength: 12 }),
        fc.double({ min: 0.05, max: 1, noNaN: true }),
        (values, lambda) => {
          const { averages } = ewmaChart({ ...handbook, values, lambda, centre: 7 });
          const i = values.length;
          const weighted = values.reduce(
            (sum, value, j) => sum + lambda * (1 - lambda) ** (i - 1 - j) * value,
            (1 - lambda) ** i * 7,
          );
          expectNear(averages.at(-1), weighted, 1e-11);
        },
      ),
    );
  });

  it('is a plain chart of single values when lambda is 1', () => {
    const plain = ewmaChart({ ...handbook, lambda: 1, limits: 'from the start' });
    expect(plain.averages).toEqual(handbook.values);
    expectNear(plain.upper[0]!, 50 + 3 * 2.0539, 1e-12);
  });

  it('lists an average beyond a limit, on either side, and not one on it', () => {
    const chart = ewmaChart({
      values: [3, 0, 6.5, -13],
      lambda: 1,
      centre: 0,
      sigma: 1,
      multiple: 3,
      limits: 'settled',
    });
    expect(chart.outside).toEqual([2, 3]);
  });

  it.each<[string, Partial<EwmaInput>, string]>([
    ['no values', { values: [] }, 'at least 1 values, got 0'],
    ['NaN', { values: [NaN] }, 'finite values, got NaN at index 0'],
    ['lambda of 0', { lambda: 0 }, 'a lambda above 0 and at most 1, got 0'],
    ['lambda above 1', { lambda: 1.1 }, 'a lambda above 0 and at most 1, got 1.1'],
    ['a sigma below zero', { sigma: -1 }, 'sigma of zero or more, got -1'],
    ['a multiple of 0', { multiple: 0 }, 'multiple above zero, got 0'],
    ['a centre that is no number', { centre: NaN }, 'finite centre, got NaN'],
  ])('refuses %s', (_, broken, message) => {
    expect(() => ewmaChart({ ...handbook, ...broken })).toThrow(message);
  });
});
