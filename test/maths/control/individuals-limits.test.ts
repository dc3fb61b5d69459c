import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { individualsLimits, type IndividualsInput } from '@/lib/maths/control/individuals-limits';
import { expectNear } from './near';

// NIST/SEMATECH e-Handbook 6.3.2.2, batch flow rate.
const flow = [49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1];

describe('individualsLimits', () => {
  it('gives the handbook limits of the flow rate', () => {
    // Printed 50.81, 1.8778, 55.8041 and 45.8159; the handbook divides by 1.128, hence 0.002.
    const limits = individualsLimits({ values: flow });
    expectNear(limits.mean, 50.81, 1e-9);
    expectNear(limits.movingRangeMean, 1.8778, 0.00005);
    expectNear(limits.upper, 55.8041, 0.002);
    expectNear(limits.lower, 45.8159, 0.002);
  });

  it('limits a moving range at 1 + 3 sqrt(pi/2 - 1) of the mean range', () => {
    // D4(2) = 1 + 3 d3/d2 with d2 = 2/sqrt(pi), d3 = sqrt(2 - 4/pi).
    const { movingRangeUpper, movingRangeMean } = individualsLimits({ values: flow });
    expectNear(movingRangeUpper, movingRangeMean * (1 + 3 * Math.sqrt(Math.PI / 2 - 1)), 1e-9);
  });

  it('takes no range across an event', () => {
    // By hand: 0 1 0 1 | 11 10 11 10: ranges 1 1 1 and 1 1 1, the jump of 10 left out.
    const values = [0, 1, 0, 1, 11, 10, 11, 10];
    const limits = individualsLimits({ values, eventsBefore: [4] });
    expect([limits.movingRangeMean, limits.movingRangeCount]).toEqual([1, 6]);
    expect(individualsLimits({ values }).movingRangeMean).toBeCloseTo(16 / 7, 12);
  });

  it('does not mind an event before the first value', () => {
    const limits = individualsLimits({ values: flow, eventsBefore: [0] });
    expect(limits).toEqual(individualsLimits({ values: flow }));
  });

  it('takes the middle range when asked for, so that one jump hardly moves it', () => {
    // By hand: ranges 1 1 9 1 1, median 1; sigma = 1 / (sqrt 2 * 0.6744898).
    const values = [0, 1, 0, 9, 8, 9];
    const limits = individualsLimits({ values, sigmaFrom: 'median moving range' });
    expectNear(limits.sigma, 1 / (Math.SQRT2 * 0.6744897502), 1e-9);
    expect(limits.sigma).toBeLessThan(individualsLimits({ values }).sigma);
  });

  it('averages the two middle ranges of an even number of them', () => {
    // By hand: ranges 1 2 3 4, median 2.5.
    const values = [0, 1, 3, 6, 10];
    const limits = individualsLimits({ values, sigmaFrom: 'median moving range' });
    expectNear(limits.sigma, 2.5 / (Math.SQRT2 * 0.6744897502), 1e-8);
  });

  it('calls the limits of fewer than twenty values trial limits', () => {
    const values = Array.from({ length: 20 }, (_, i) => i % 3);
    expect(individualsLimits({ values }).trial).toBe(false);
    expect(individualsLimits({ values: values.slice(1) }).trial).toBe(true);
  });

  it('moves with the values and keeps its width', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: -500, max: 500 }), { minLength: 2, maxLength: 30 }),
        fc.integer({ min: -1000, max: 1000 }),
        (values, shift) => {
          const still = individualsLimits({ values });
          const moved = individualsLimits({ values: values.map((value) => value + shift) });
          expectNear(moved.mean, still.mean + shift, 1e-9);
          expectNear(moved.upper - moved.lower, still.upper - still.lower, 1e-9);
          expectNear(still.upper - still.mean, 3 * still.sigma, 1e-9);
        },
      ),
    );
  });

  it.each<[string, Partial<IndividualsInput>, string]>([
    ['one value', { values: [1] }, 'at least 2 values, got 1'],
    ['NaN', { values: [1, NaN] }, 'finite values, got NaN at index 1'],
    [
      'an event past the end',
      { eventsBefore: [10] },
      'events at whole indices from 0 to 9, got 10',
    ],
    ['an event between all values', { values: [1, 2], eventsBefore: [1] }, 'no event between'],
  ])('refuses %s', (_, broken, message) => {
    expect(() => individualsLimits({ values: flow, ...broken })).toThrow(message);
  });
});
