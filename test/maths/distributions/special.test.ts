import { describe, expect, it } from 'vitest';
import { betaTails } from '@/lib/maths/distributions/beta-tails';
import { complementaryError } from '@/lib/maths/distributions/complementary-error';
import { deviance } from '@/lib/maths/distributions/deviance';
import { gammaPrefix } from '@/lib/maths/distributions/gamma-prefix';
import { gammaTails } from '@/lib/maths/distributions/gamma-tails';
import { integral } from '@/lib/maths/distributions/integral';
import { positiveRoot } from '@/lib/maths/distributions/positive-root';
import { stirlingError } from '@/lib/maths/distributions/stirling-error';
import { expectNear } from '../near';

// Figures without another source: mpmath 1.3 at 40 digits. Doubles carry 1e-16; a few roundings in
// a row leave 1e-15, an exponent of some hundreds 1e-13.
describe('complementaryError', () => {
  it.each([
    [-2, 1.9953222650189526],
    [0.3, 0.6713732405408726],
    [1, 0.15729920705028513],
    [3.5, 7.430983723414128e-7],
    [5, 1.537459794428035e-12],
    [15, 7.212994172451207e-100],
  ])('is right on every interval: %s', (x, wanted) => {
    expectNear(complementaryError(x), wanted, { rel: 1e-15 });
  });

  it('ends at nothing and at two', () => {
    expect(complementaryError(27)).toBe(0);
    expect(complementaryError(-27)).toBe(2);
  });
});

describe('stirlingError', () => {
  it.each([
    [0.5, 0.15342640972002736],
    [1, 0.08106146679532726],
    [3.25, 0.025562157964525795],
    [14.5, 0.005746216513010116],
    [20, 0.004166319691996922],
    [1000, 8.333333055555635e-5],
  ])('keeps its absolute precision at %s', (x, wanted) => {
    expectNear(stirlingError(x), wanted, { abs: 2e-15 });
  });
});

describe('deviance', () => {
  it('does not cancel when the two are close', () => {
    expect(deviance(3, 3)).toBe(0);
    // The double nearest to 3.000001 is off by 1e-16 of itself, which is 2e-10 of the difference.
    expectNear(deviance(3, 3.000001), 1.666666296296389e-13, { rel: 1e-9 });
    expectNear(deviance(10, 4), 3.1629073187415506, { rel: 1e-15 });
    expectNear(deviance(4, 10), 4 * Math.log(0.4) + 6, { rel: 1e-15 });
  });
});

describe('gammaTails and betaTails', () => {
  it('reduce to elementary functions where they should', () => {
    // Q(1, x) = e^-x; I_x(a, 1) = x^a; I_x(1, b) = 1 - (1-x)^b: DLMF 8.4 and 8.17.
    expectNear(gammaTails(1, 0.3).upper, Math.exp(-0.3), { rel: 1e-15 });
    expectNear(gammaTails(1, 30).upper, Math.exp(-30), { rel: 1e-14 });
    expectNear(betaTails(3.5, 1, 0.2, 0.8).lower, 0.2 ** 3.5, { rel: 1e-14 });
    expectNear(betaTails(1, 2.5, 0.9, 0.1).upper, 0.1 ** 2.5, { rel: 1e-14 });
  });

  it('mirror each other: I_x(a, b) and I_(1-x)(b, a)', () => {
    const one = betaTails(2.3, 7.1, 0.31, 0.69);
    const other = betaTails(7.1, 2.3, 0.69, 0.31);
    expectNear(one.lower, other.upper, { rel: 1e-14 });
    expectNear(one.upper, other.lower, { rel: 1e-14 });
  });

  it('end at nothing and at one', () => {
    expect(gammaTails(2, 0)).toEqual({ lower: 0, upper: 1 });
    expect(gammaTails(2, Infinity)).toEqual({ lower: 1, upper: 0 });
    expect(betaTails(2, 3, 0, 1)).toEqual({ lower: 0, upper: 1 });
    expect(betaTails(2, 3, 1, 0)).toEqual({ lower: 1, upper: 0 });
  });

  it('gammaPrefix is x^a e^-x / Gamma(a)', () => {
    expectNear(gammaPrefix(3, 2), (8 * Math.exp(-2)) / 2, { rel: 1e-15 });
  });
});

describe('integral', () => {
  it('is exact for what Kronrod and Gauss integrate exactly', () => {
    // The 15-point rule integrates every power to 23, the 7-point one to 13: a wrong node or weight shows.
    for (let power = 0; power <= 22; power += 2) {
      expectNear(
        integral((x) => x ** power, -1, 1),
        2 / (power + 1),
        { rel: 1e-14 },
      );
    }
    expectNear(
      integral((x) => x ** 13 + 1, 0, 1),
      1 / 14 + 1,
      { rel: 1e-14 },
    );
  });

  it('halves where it bends', () => {
    expectNear(
      integral((x) => Math.sqrt(x), 0, 1),
      2 / 3,
      { rel: 1e-10 },
    );
    expectNear(
      integral((x) => 1 / (1e-4 + x * x), -1, 1),
      200 * Math.atan(100),
      { rel: 1e-12 },
    );
  });
});

describe('positiveRoot', () => {
  const power = (x: number) => ({ value: x ** 3, slope: 3 * x * x });
  const inverse = (x: number) => ({ value: 1 / x, slope: 1 / (x * x) });

  it('finds the place on rising and on falling curves, from a bad guess too', () => {
    for (const guess of [1e-9, 1, 1e9]) {
      expectNear(positiveRoot(power, 8, true, guess), 2, { rel: 1e-15 });
      expectNear(positiveRoot(inverse, 1e-30, false, guess), 1e30, { rel: 1e-13 });
    }
  });

  it('halves the bracket where the curve is too flat for a step', () => {
    const flat = (x: number) => ({ value: x / (1 + x), slope: 1 / (1 + x) ** 2 });
    expectNear(positiveRoot(flat, 0.75, true, 1e9), 3, { rel: 1e-14 });
  });
});
