import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { d2Star } from '@/lib/maths/gauge/d2-star';
import { gaugeShares } from '@/lib/maths/gauge/gauge-shares';
import {
  gaugeSpreadFromRanges,
  type RangeSummary,
} from '@/lib/maths/gauge/gauge-spread-from-ranges';
import { gaugeStudyByRange } from '@/lib/maths/gauge/gauge-study-by-range';
import { studyShape } from '@/lib/maths/gauge/study-shape';
import { expectNear } from '../control/near';
import { manual } from './manual';

// A course question: two operators, two trials, ten parts; answers 2.22, 2.78 and 3.56.
const course: RangeSummary = { parts: 10, trials: 2, rangeMeans: [2, 3], readingMeans: [201, 205] };

describe('gaugeSpreadFromRanges', () => {
  it('gives the published answers of a course question', () => {
    const found = gaugeSpreadFromRanges(course);
    expectNear(found.repeatability, 2.22, 0.006);
    expectNear(found.reproducibility, 2.78, 0.006);
    expectNear(found.gauge, 3.56, 0.006);
    expect([found.rangeMean, found.operatorDifference, found.operatorsAlike]).toEqual([
      2.5,
      4,
      false,
    ]);
  });

  it('gives no reproducibility, and says so, when repeats explain the difference', () => {
    // By hand: (0.1 * 0.7071)^2 = 0.005 is less than 2.2156^2 / 20 = 0.245.
    const found = gaugeSpreadFromRanges({ ...course, readingMeans: [201, 201.1] });
    expect([found.reproducibility, found.operatorsAlike]).toEqual([0, true]);
    expect(found.gauge).toBe(found.repeatability);
  });

  it('takes ranges of zero, from a gauge that repeats to the last digit', () => {
    const found = gaugeSpreadFromRanges({ ...course, rangeMeans: [0, 0] });
    expect(found.repeatability).toBe(0);
    expectNear(found.reproducibility, 4 / Math.SQRT2, 1e-12); // K2 for two operators
  });

  it.each<[string, Partial<RangeSummary>, string]>([
    ['one operator', { rangeMeans: [2], readingMeans: [201] }, 'at least 2 operators, got 1'],
    [
      'a mean missing',
      { readingMeans: [201] },
      'one mean reading for each mean range, got 2 and 1',
    ],
    ['a range below zero', { rangeMeans: [2, -1] }, 'mean ranges of zero or more, got -1'],
    ['one trial', { trials: 1 }, 'a whole number of trials from 2 to 100, got 1'],
    ['no parts', { parts: 0 }, 'a whole number of parts of 1 or more, got 0'],
    ['a mean that is no number', { readingMeans: [201, NaN] }, 'finite mean readings, got NaN'],
    ['a range that is no number', { rangeMeans: [NaN, 2] }, 'finite mean ranges, got NaN'],
  ])('refuses %s', (_, broken, message) => {
    expect(() => gaugeSpreadFromRanges({ ...course, ...broken })).toThrow(message);
  });
});

describe('gaugeStudyByRange', () => {
  it('gives the published figures of the manual', () => {
    // AIAG MSA manual: it works with K1 0.5908, K2 0.5231, K3 0.3146, hence 0.0003.
    const study = gaugeStudyByRange(manual);
    expectNear(study.rangeMean, 0.3417, 0.0003);
    expectNear(study.operatorDifference, 0.4446, 0.0003);
    expectNear(study.partRange, 3.511, 0.0003);
    expectNear(study.repeatability, 0.20188, 0.0003);
    expectNear(study.reproducibility, 0.22963, 0.0003);
    expectNear(study.gauge, 0.30575, 0.0003);
    expectNear(study.part, 1.10456, 0.0003);
    expectNear(study.total, 1.1461, 0.0003);
    expectNear(study.percentOfTotal, 26.68, 0.02);
    expect(Math.trunc(study.distinctSizes!)).toBe(5);
    expect(study.percentOfTolerance).toBeUndefined();
  });

  it('gives each operator the mean range of the parts', () => {
    // The manual's tabulated operator means of ranges: 0.184, 0.513, 0.328.
    const { rangeMeans } = gaugeStudyByRange(manual);
    [0.184, 0.513, 0.328].forEach((wanted, o) => expectNear(rangeMeans[o], wanted, 1e-9));
  });

  it('names the ranges beyond their limit', () => {
    // D4(3) printed 2.574: the limit is 0.8795; only operator 2 on part 5 and part 4 are above it:
    // 1.03 - 0.01 = 1.02 at part 4. Ranges of part 2: 0.75, part 5: 0.72.
    const { rangeUpper, rangesOutside } = gaugeStudyByRange(manual);
    expectNear(rangeUpper, 2.574 * 0.3417, 0.0005);
    expect(rangesOutside).toEqual([{ part: 3, operator: 1 }]);
  });

  it('counts six gauge deviations against a tolerance', () => {
    expectNear(gaugeStudyByRange(manual, 8).percentOfTolerance, (100 * 6 * 0.30578) / 8, 0.001);
  });
});

describe('gaugeShares', () => {
  it('shares out a three-four-five triangle', () => {
    // By hand: 9/25, 3/5, 18/36, and four thirds of 1.4142 = 1.8856.
    const shares = gaugeShares({ gauge: 3, part: 4, tolerance: 36 });
    expectNear(shares.percentContribution, 36, 1e-12);
    expectNear(shares.percentOfTotal, 60, 1e-12);
    expectNear(shares.percentOfTolerance, 50, 1e-12);
    expectNear(shares.distinctSizes, 1.8856, 1e-4);
  });

  it('leaves out what cannot be divided', () => {
    expect(gaugeShares({ gauge: 0, part: 0 })).toEqual({});
    expect(gaugeShares({ gauge: 0, part: 2 })).toEqual({
      percentContribution: 0,
      percentOfTotal: 0,
    });
    expect(gaugeShares({ gauge: 1, part: 0 }).distinctSizes).toBe(0);
  });

  it.each([
    [{ gauge: -1, part: 1 }, 'gauge of zero or more, got -1'],
    [{ gauge: 1, part: NaN }, 'part of zero or more, got NaN'],
    [{ gauge: 1, part: 1, tolerance: 0 }, 'tolerance above zero, got 0'],
  ])('refuses %o', (input, message) => {
    expect(() => gaugeShares(input)).toThrow(message);
  });
});

describe('d2Star', () => {
  it('gives the divisors of one range printed in the manual', () => {
    // AIAG MSA (from memory): K2 0.5231 for three operators, K3 0.3146 for ten parts.
    expectNear(1 / d2Star(3, 1), 0.5231, 5e-5);
    expectNear(1 / d2Star(10, 1), 0.3146, 5e-5);
  });

  it('is exactly sqrt 2 for one range of two, and comes down to d2 with many', () => {
    // d2^2 + d3^2 = E R^2 = 2 for two values.
    expectNear(d2Star(2, 1), Math.SQRT2, 1e-12);
    expectNear(d2Star(2, 1e9), 2 / Math.sqrt(Math.PI), 1e-9);
  });

  it('refuses no ranges', () => {
    expect(() => d2Star(2, 0)).toThrow('a whole number of ranges of 1 or more, got 0');
  });
});

describe('studyShape', () => {
  it('counts parts, operators and trials', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 6 }),
        fc.integer({ min: 2, max: 6 }),
        fc.integer({ min: 2, max: 6 }),
        (parts, operators, trials) => {
          const readings = Array.from({ length: parts }, () =>
            Array.from({ length: operators }, () => Array.from({ length: trials }, () => 0)),
          );
          expect(studyShape('any', readings)).toEqual({ parts, operators, trials });
        },
      ),
    );
  });

  const cell = [1, 2];
  it.each([
    ['no parts', [], 'at least 2 parts, got 0'],
    ['one part', [[cell, cell]], 'at least 2 parts, got 1'],
    ['one operator', [[cell], [cell]], 'at least 2 operators, got 1'],
    [
      'one trial',
      [
        [[1], [1]],
        [[1], [1]],
      ],
      'at least 2 trials, got 1',
    ],
    ['an operator missing', [[cell, cell], [cell]], 'another shape at part 1'],
    [
      'a trial missing',
      [
        [cell, cell],
        [cell, [1]],
      ],
      'another shape at part 1',
    ],
    [
      'NaN',
      [
        [cell, cell],
        [cell, [1, NaN]],
      ],
      'finite readings at part 1, got NaN at index 1',
    ],
  ])('refuses %s', (_, readings, message) => {
    expect(() => studyShape('gaugeStudyByRange', readings)).toThrow(message);
    expect(() => gaugeStudyByRange(readings)).toThrow(`gaugeStudyByRange requires`);
  });
});
