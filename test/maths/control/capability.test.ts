import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { capabilityIndices, type CapabilityInput } from '@/lib/maths/control/capability-indices';
import { cpInterval } from '@/lib/maths/control/cp-interval';
import { cpkInterval } from '@/lib/maths/control/cpk-interval';
import {
  percentileCapability,
  type PercentileInput,
} from '@/lib/maths/control/percentile-capability';
import { expectNear } from './near';

// NIST/SEMATECH e-Handbook 6.1.6 (from memory): limits 8 and 20, mean 16, sigma 2.
const handbook: CapabilityInput = { mean: 16, sigma: 2, lower: 8, upper: 20 };

describe('capabilityIndices', () => {
  it('gives the indices printed in the handbook', () => {
    const { cp, cpk, cpkUpper, cpkLower, offCentre } = capabilityIndices(handbook);
    expectNear(cp, 1, 1e-12);
    expectNear(cpk, 0.6667, 5e-5);
    expectNear(cpkUpper, 0.6667, 5e-5);
    expectNear(cpkLower, 1.3333, 5e-5);
    expectNear(offCentre, 0.3333, 5e-5);
  });

  it('gives the share of pieces beyond each limit', () => {
    // PHI(-2) and PHI(-4) of a normal table: 0.0227501 and 0.0000316712.
    const { fractionAbove, fractionBelow } = capabilityIndices(handbook);
    expectNear(fractionAbove, 0.0227501, 5e-8);
    expectNear(fractionBelow, 3.16712e-5, 5e-11);
  });

  it('counts a miss of the best size like more spread', () => {
    // By hand: 12 / (6 sqrt(4 + 4)) = 1 / sqrt 2.
    expectNear(capabilityIndices({ ...handbook, target: 14 }).cpm, Math.SQRT1_2, 1e-12);
    expect(capabilityIndices(handbook).cpm).toBeUndefined();
  });

  it('gives only what one limit allows', () => {
    const upperOnly = capabilityIndices({ mean: 16, sigma: 2, upper: 20 });
    expect(Object.keys(upperOnly).toSorted()).toEqual([
      'cpk',
      'cpkUpper',
      'fractionAbove',
      'fractionBelow',
    ]);
    expect(upperOnly.fractionBelow).toBe(0);
    const lowerOnly = capabilityIndices({ mean: 16, sigma: 2, lower: 8 });
    expectNear(lowerOnly.cpk, 8 / 6, 1e-12);
    expect(lowerOnly.cpkUpper).toBeUndefined();
    expect(lowerOnly.fractionAbove).toBe(0);
  });

  it('goes below zero when the mean is outside', () => {
    expect(capabilityIndices({ ...handbook, mean: 21 }).cpk).toBeLessThan(0);
  });

  it('has Cpk = Cp (1 - k) while the mean is inside', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 8, max: 20, noNaN: true }),
        fc.double({ min: 0.1, max: 10, noNaN: true }),
        (mean, sigma) => {
          const { cp, cpk, offCentre } = capabilityIndices({ ...handbook, mean, sigma });
          expectNear(cpk, cp! * (1 - offCentre!), 1e-12 * (1 + cp!));
        },
      ),
    );
  });

  it.each<[string, Partial<CapabilityInput>, string]>([
    ['a sigma of 0', { sigma: 0 }, 'sigma above zero, got 0'],
    ['a mean that is no number', { mean: NaN }, 'finite mean, got NaN'],
    ['limits the wrong way round', { lower: 30 }, 'a lower limit below the upper, got 30 and 20'],
    ['a limit that is no number', { upper: NaN }, 'finite limits, got NaN'],
    ['a target that is no number', { target: NaN }, 'finite target, got NaN'],
  ])('refuses %s', (_, broken, message) => {
    expect(() => capabilityIndices({ ...handbook, ...broken })).toThrow(message);
  });

  it('refuses to judge without any limit', () => {
    expect(() => capabilityIndices({ mean: 1, sigma: 1 })).toThrow('at least one limit, got none');
  });
});

describe('cpInterval', () => {
  it('gives the published interval for 20 pieces', () => {
    // Montgomery, Introduction to Statistical Quality Control: Cp 2.29, 1.57 to 3.01 (from memory).
    const { low, high } = cpInterval(24 / (6 * 1.75), 20, 0.95);
    expectNear(low, 1.57, 0.011);
    expectNear(high, 3.01, 0.011);
  });

  it('comes from the chi-square table', () => {
    // chi2(29): 16.047 at 0.025, 17.708 at 0.05, 45.722 at 0.975, as printed in any table.
    const { low, high, lowOneSided } = cpInterval(1, 30, 0.95);
    expectNear(low, Math.sqrt(16.047 / 29), 2e-5);
    expectNear(high, Math.sqrt(45.722 / 29), 2e-5);
    expectNear(lowOneSided, Math.sqrt(17.708 / 29), 2e-5);
  });

  it.each([
    [1, 1, 0.95, 'a whole number of pieces of 2 or more, got 1'],
    [-1, 30, 0.95, 'Cp of zero or more, got -1'],
    [1, 30, 1, 'a confidence between 0 and 1, got 1'],
  ])('refuses Cp %s from %s pieces at %s', (cp, n, confidence, message) => {
    expect(() => cpInterval(cp, n, confidence)).toThrow(message);
  });
});

describe('cpkInterval', () => {
  it('is Bissell’s: z sqrt(1/(9n) + Cpk^2/(2(n-1))) to either side', () => {
    // By hand for Montgomery's exercise (10, 20, mean 16, s 1.2, n 50): Cpk 1.1111, half-width
    // 1.959964 sqrt(1/450 + 1.234568/98) = 0.238600.
    const { low, high } = cpkInterval(10 / 9, 50, 0.95);
    expectNear(high - 10 / 9, 0.2386, 5e-6);
    expectNear(10 / 9 - low, 0.2386, 5e-6);
  });

  it.each([
    [NaN, 50, 0.95, 'finite Cpk, got NaN'],
    [1, 1, 0.95, 'a whole number of pieces of 2 or more, got 1'],
    [1, 50, 0, 'a confidence between 0 and 1, got 0'],
  ])('refuses Cpk %s from %s pieces at %s', (cpk, n, confidence, message) => {
    expect(() => cpkInterval(cpk, n, confidence)).toThrow(message);
  });
});

describe('percentileCapability', () => {
  // By hand: 0.09 / 0.06, 0.04 / 0.04 and 0.05 / 0.02.
  const skewed: PercentileInput = { low: 9.98, median: 10, high: 10.04, lower: 9.95, upper: 10.04 };

  it('measures each side with its own half of the spread', () => {
    const { pp, ppk, ppkUpper, ppkLower } = percentileCapability(skewed);
    expectNear(pp, 1.5, 1e-9);
    expectNear(ppkUpper, 1, 1e-9);
    expectNear(ppkLower, 2.5, 1e-9);
    expectNear(ppk, 1, 1e-9);
  });

  it('gives only what one limit allows', () => {
    const { lower: _, ...upperOnly } = skewed;
    expect(Object.keys(percentileCapability(upperOnly)).toSorted()).toEqual(['ppk', 'ppkUpper']);
    const { upper: __, ...lowerOnly } = skewed;
    expectNear(percentileCapability(lowerOnly).ppk, 2.5, 1e-9);
  });

  it.each<[string, Partial<PercentileInput>, string]>([
    ['percentiles out of order', { median: 9 }, 'three increasing percentiles, got 9.98, 9 and'],
    ['no spread below the median', { low: 10 }, 'three increasing percentiles, got 10, 10 and'],
    ['no spread above the median', { high: 10 }, 'three increasing percentiles, got 9.98, 10 and'],
    ['a percentile that is no number', { high: NaN }, 'finite percentiles, got NaN at index 2'],
    ['limits the wrong way round', { lower: 11 }, 'a lower limit below the upper'],
    ['a limit that is no number', { lower: NaN }, 'finite limits, got NaN'],
  ])('refuses %s', (_, broken, message) => {
    expect(() => percentileCapability({ ...skewed, ...broken })).toThrow(message);
  });

  it('refuses to judge without any limit', () => {
    const none = { low: 1, median: 2, high: 3 };
    expect(() => percentileCapability(none)).toThrow('at least one limit, got none');
  });
});
