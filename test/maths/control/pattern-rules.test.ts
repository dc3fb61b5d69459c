import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { patternRules, type PatternRules } from '@/lib/maths/control/pattern-rules';

describe('patternRules', () => {
  it('finds the points beyond three sigma that the book marks', () => {
    // Montgomery and Runger, Figure 16-8: subgroups 6, 8, 11 and 19 of the vane opening means.
    const means = [
      31.6, 33.4, 35, 32.2, 33.8, 38.4, 31.6, 36.8, 35, 34, 29.8, 34, 33, 34.8, 35.6, 30.8, 33,
      31.6, 28.2, 33.8,
    ];
    const { beyondThreeSigma } = patternRules(means, 33.32, 1.1151840459);
    expect(beyondThreeSigma.map((index) => index + 1)).toEqual([6, 8, 11, 19]);
  });

  it('reads each pattern where it is complete, point by point as Nelson words it', () => {
    // Nelson 1984 in words, spelled out a window at a time; half-sigma steps make ties and points on
    // the lines common.
    fc.assert(
      fc.property(halfSigmas, (values) => {
        expect(patternRules(values, 0, 1)).toEqual(byWindows(values));
      }),
      { numRuns: 2000 },
    );
  });

  it('reads runs and zigzags just as well when they are long', () => {
    fc.assert(
      fc.property(stretches, (values) => {
        expect(patternRules(values, 0, 1)).toEqual(byWindows(values));
      }),
      { numRuns: 2000 },
    );
  });

  it('does not change when the chart is moved, stretched or turned upside down', () => {
    fc.assert(
      fc.property(halfSigmas, (values) => {
        const turned = patternRules(
          values.map((value) => 100 - 4 * value),
          100,
          4,
        );
        expect(turned).toEqual(patternRules(values, 0, 1));
      }),
    );
  });

  it('takes a point on a line for not beyond it', () => {
    const found = patternRules([3, -3, 3.5, 0], 0, 1);
    expect(found.beyondThreeSigma).toEqual([2]);
  });

  it('finds two of the first two beyond two sigma without waiting for a third', () => {
    expect(patternRules([2.5, 2.5], 0, 1).twoOfThreeBeyondTwoSigma).toEqual([1]);
  });

  it('finds nothing in no points', () => {
    expect(Object.values(patternRules([], 0, 1)).flat()).toEqual([]);
  });

  it.each([
    ['NaN', [0, NaN], 0, 1, 'finite values, got NaN at index 1'],
    ['a sigma of 0', [0], 0, 0, 'sigma above zero, got 0'],
    ['a centre that is no number', [0], NaN, 1, 'finite centre, got NaN'],
  ])('refuses %s', (_, values, centre, sigma, message) => {
    expect(() => patternRules(values, centre, sigma)).toThrow(message);
  });
});

const halfSigmas = fc.array(
  fc.integer({ min: -7, max: 7 }).map((halves) => halves / 2),
  { maxLength: 40 },
);

/** Stretches of one kind of pattern after another, so that the long ones turn up too. */
const stretches = fc
  .array(
    fc.tuple(
      fc.constantFrom<(i: number) => number>(
        (i) => (i % 2 === 0 ? 0.5 : 0.2),
        (i) => i / 2 - 3,
        (i) => 3 - i / 2,
        () => 0.5,
        () => -1.5,
        (i) => (i % 2 === 0 ? 1.5 : -1.5),
      ),
      fc.integer({ min: 1, max: 17 }),
    ),
    { maxLength: 4 },
  )
  .map((parts) => parts.flatMap(([shape, length]) => Array.from({ length }, (_, i) => shape(i))));

function byWindows(values: readonly number[]): PatternRules {
  const ends = (length: number, holds: (window: readonly number[]) => boolean) =>
    values.flatMap((_, i) => {
      const window = values.slice(i - length + 1, i + 1);
      return i + 1 >= length && holds(window) ? [i] : [];
    });
  /** Some of the newest few beyond a line on the last one's side; short of the window at the start. */
  const someBeyond = (wanted: number, length: number, line: number) =>
    values.flatMap((value, i) => {
      const window = values.slice(Math.max(0, i - length + 1), i + 1);
      const above = value > line && window.filter((other) => other > line).length >= wanted;
      const below = value < -line && window.filter((other) => other < -line).length >= wanted;
      return above || below ? [i] : [];
    });
  return {
    beyondThreeSigma: ends(1, ([value]) => Math.abs(value!) > 3),
    nineOnOneSide: ends(9, sameSide),
    sixRisingOrFalling: ends(6, (window) => sameSide(steps(window))),
    fourteenAlternating: ends(14, (window) => {
      const turns = steps(window);
      return turns.every((step, i) => step !== 0 && (i === 0 || step * turns[i - 1]! < 0));
    }),
    twoOfThreeBeyondTwoSigma: someBeyond(2, 3, 2),
    fourOfFiveBeyondOneSigma: someBeyond(4, 5, 1),
    fifteenWithinOneSigma: ends(15, (window) => window.every((value) => Math.abs(value) < 1)),
    eightBeyondOneSigma: ends(8, (window) => window.every((value) => Math.abs(value) > 1)),
    eightOnOneSide: ends(8, sameSide),
  };
}

function sameSide(window: readonly number[]): boolean {
  return window.every((value) => value > 0) || window.every((value) => value < 0);
}

function steps(window: readonly number[]): number[] {
  return window.slice(1).map((value, i) => value - window[i]!);
}
