import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  add,
  divide,
  exactProduct,
  exactSum,
  multiply,
  paired,
  squareRoot,
  subtract,
} from '@/lib/maths/statistics/double-double';
import { leastSquares } from '@/lib/maths/statistics/least-squares';
import { expectNear } from '../near';

describe('double-double arithmetic', () => {
  it('keeps what a double drops', () => {
    expect(exactSum(1, 2 ** -80)).toEqual({ high: 1, low: 2 ** -80 });
    // (1 + e)^2 = 1 + 2e + e^2 with e = 2^-40: the last term is beyond a double.
    const square = exactProduct(1 + 2 ** -40, 1 + 2 ** -40);
    expect(square).toEqual({ high: 1 + 2 ** -39, low: 2 ** -80 });
  });

  it('divides and takes roots to about 31 digits', () => {
    const third = divide(paired(1), paired(3));
    const back = subtract(multiply(third, paired(3)), paired(1));
    expect(Math.abs(back.high)).toBeLessThan(1e-31);
    const root = squareRoot(paired(2));
    expect(Math.abs(subtract(multiply(root, root), paired(2)).high)).toBeLessThan(1e-31);
    expect(squareRoot(paired(0))).toEqual(paired(0));
  });

  it('adds whole numbers beyond 2^53 exactly', () => {
    const whole = fc.integer({ min: -1e15, max: 1e15 });
    fc.assert(
      fc.property(whole, whole, whole, (a, b, c) => {
        const sum = add(multiply(paired(a), paired(b)), paired(c));
        expect(BigInt(sum.high) + BigInt(sum.low)).toBe(BigInt(a) * BigInt(b) + BigInt(c));
      }),
    );
  });
});

describe('leastSquares', () => {
  it('fits a straight line by the textbook formula', () => {
    // By hand: x mean 2, y mean 4.0333; slope (2.1 x -1 + 6.1)/2 = 2, intercept 0.0333.
    const fit = leastSquares([[1], [2], [3]], [2.1, 3.9, 6.1], { constant: true });
    expectNear(fit.estimates[0]!, 1 / 30, { rel: 1e-13 });
    expectNear(fit.estimates[1]!, 2, { rel: 1e-14 });
    // Residuals 0.0667, -0.1333, 0.0667: sum of squares 0.8/30.
    expectNear(fit.residualSquares, 0.8 / 30, { rel: 1e-13 });
    expectNear(fit.residuals[1]!, -4 / 30, { rel: 1e-12 });
    expectNear(fit.standardErrors[1]!, Math.sqrt(0.8 / 30 / 2), { rel: 1e-13 });
    expect([fit.residualDegrees, fit.regressionDegrees]).toEqual([1, 1]);
  });

  it('keeps the digits of nearly dependent columns', () => {
    // NIST StRD Wampler1: y is the sum of the powers 0 to 5 of x = 0 to 20; every coefficient is 1.
    const x = Array.from({ length: 21 }, (_, i) => i);
    const rows = x.map((value) => [1, 2, 3, 4, 5].map((power) => value ** power));
    const y = rows.map((row) => 1 + row.reduce((sum, value) => sum + value, 0));
    const fit = leastSquares(rows, y, { constant: true });
    for (const estimate of fit.estimates) expectNear(estimate, 1, { rel: 1e-12 });
    expect(fit).toMatchObject({ residualSquares: 0, residualSd: 0, f: undefined, rSquared: 1 });
  });

  it('measures a line without a constant about zero', () => {
    // NIST StRD NoInt1: certified slope 2.07438016528926, r-squared 0.999365492298663.
    const x = Array.from({ length: 11 }, (_, i) => 60 + i);
    const fit = leastSquares(
      x.map((value) => [value]),
      x.map((value) => value + 70),
      { constant: false },
    );
    expectNear(fit.estimates[0]!, 2.07438016528926, { rel: 1e-13 });
    expectNear(fit.rSquared!, 0.999365492298663, { rel: 1e-13 });
    expect(fit.regressionDegrees).toBe(1);
  });

  it('finds the coefficients it was given back, whatever they are', () => {
    const number = fc.double({ min: -100, max: 100, noNaN: true });
    fc.assert(
      fc.property(number, number, number, (a, b, c) => {
        const rows = [1, 2, 4, 7, 11].map((x) => [x, Math.sin(x)]);
        const y = rows.map(([x, s]) => a + b * x! + c * s!);
        const { estimates } = leastSquares(rows, y, { constant: true });
        [a, b, c].forEach((value, i) => expectNear(estimates[i]!, value, { abs: 1e-11 }));
      }),
    );
  });

  it('refuses rows that do not fit, too few of them, and columns made of others', () => {
    const options = { constant: true };
    expect(() => leastSquares([[1], [2, 3]], [1, 2], options)).toThrow('one row of 1');
    expect(() => leastSquares([[1], [2]], [1], options)).toThrow('got 2 rows');
    expect(() => leastSquares([[1], [2]], [1, 2], options)).toThrow('got 2 for 2');
    expect(() => leastSquares([[1], [NaN], [3]], [1, 2, 3], options)).toThrow('got NaN');
    const twice = [1, 2, 3, 5].map((x) => [x, 2 * x]);
    expect(() => leastSquares(twice, [1, 2, 3, 4], options)).toThrow('column 2 made of');
    const still = [1, 2, 3].map(() => [4]);
    expect(() => leastSquares(still, [1, 2, 3], options)).toThrow('column 1 made of');
  });
});
