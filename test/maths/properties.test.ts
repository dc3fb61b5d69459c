import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { costMatrix } from '@/lib/maths/assignment/cost-matrix';
import { bottleneck } from '@/lib/maths/assignment/bottleneck';
import { leastTotal } from '@/lib/maths/assignment/least-total';
import { linearChain } from '@/lib/maths/chain/linear-chain';
import { MathsInputError } from '@/lib/maths/check';
import { driftSinceEvent } from '@/lib/maths/control/drift-since-event';
import { individualsLimits } from '@/lib/maths/control/individuals-limits';
import { studentTQuantile } from '@/lib/maths/distributions/student-t-quantile';
import { verdictOf } from '@/lib/maths/fit/verdict-of';
import { classLimits } from '@/lib/maths/iso286/class-limits';
import { combinedUncertainty } from '@/lib/maths/metrology/combined-uncertainty';
import { expandedUncertainty } from '@/lib/maths/metrology/expanded-uncertainty';
import { mean } from '@/lib/maths/statistics/mean';
import { pooledStandardDeviation } from '@/lib/maths/statistics/pooled-standard-deviation';
import { standardDeviation } from '@/lib/maths/statistics/standard-deviation';
import { sizeAtTemperature } from '@/lib/maths/thermal/size-at-temperature';

// What must hold whatever the data; no source is needed but the definitions.

const square = fc.integer({ min: 2, max: 7 }).chain((n) =>
  fc.array(fc.array(fc.integer({ min: 0, max: 999 }), { minLength: n, maxLength: n }), {
    minLength: n,
    maxLength: n,
  }),
);

describe('a pairing', () => {
  it('is never beaten by exchanging the partners of two pairs', () => {
    fc.assert(
      fc.property(square, fc.nat(), fc.nat(), (costs, a, b) => {
        const { pairs, total } = leastTotal(costMatrix(costs));
        const [one, two] = [pairs[a % pairs.length]!, pairs[b % pairs.length]!];
        const now = costs[one[0]]![one[1]]! + costs[two[0]]![two[1]]!;
        const swapped = costs[one[0]]![two[1]]! + costs[two[0]]![one[1]]!;
        if (one !== two) expect(swapped).toBeGreaterThanOrEqual(now);
        expect(total).toBe(pairs.reduce((sum, [row, column]) => sum + costs[row]![column]!, 0));
      }),
    );
  });

  it('has no worse pair under the bottleneck than under the least total', () => {
    fc.assert(
      fc.property(square, (costs) => {
        const matrix = costMatrix(costs);
        const worst = Math.max(...leastTotal(matrix).pairs.map(([r, c]) => costs[r]![c]!));
        expect(bottleneck(matrix)!.worst).toBeLessThanOrEqual(worst);
      }),
    );
  });
});

describe('a chain', () => {
  it('has a worst case no narrower than its root-sum-square, and as wide with one link', () => {
    const link = fc.record({
      coefficient: fc.constantFrom(-2, -1, 1, 0.5),
      nominal: fc.double({ min: 1, max: 100, noNaN: true }),
      upper: fc.double({ min: 0, max: 0.5, noNaN: true }),
      lower: fc.double({ min: -0.5, max: 0, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(link, { minLength: 1, maxLength: 12 }), (links) => {
        const { worstHalf, rssHalf } = linearChain(links);
        expect(worstHalf).toBeGreaterThanOrEqual(rssHalf * (1 - 1e-12));
        if (links.length === 1) expect(worstHalf).toBeCloseTo(rssHalf, 12);
      }),
    );
  });
});

describe('readings', () => {
  const values = fc.array(fc.integer({ min: -5000, max: 5000 }), { minLength: 2, maxLength: 60 });

  it('give the same mean and spread in any order', () => {
    fc.assert(
      fc.property(values, (microns) => {
        const turned = microns.toReversed();
        expect(mean(turned)).toBeCloseTo(mean(microns), 9);
        expect(standardDeviation(turned)).toBeCloseTo(standardDeviation(microns), 9);
      }),
    );
  });

  it('keep their spread when all move alike, and scale it when all scale', () => {
    fc.assert(
      fc.property(values, fc.integer({ min: -1e6, max: 1e6 }), (microns, shift) => {
        const spread = standardDeviation(microns);
        expect(standardDeviation(microns.map((v) => v + shift))).toBeCloseTo(spread, 6);
        expect(standardDeviation(microns.map((v) => v * 25.4))).toBeCloseTo(25.4 * spread, 6);
      }),
    );
  });
});

describe('nonsense', () => {
  const nothing: [string, () => unknown][] = [
    ['the mean of no values', () => mean([])],
    ['the mean of NaN', () => mean([1, Number.NaN])],
    ['the spread of one value', () => standardDeviation([1])],
    ['a pooled spread below zero', () => pooledStandardDeviation([{ sd: -1, degrees: 2 }])],
    ['a combined uncertainty with NaN', () => combinedUncertainty([Number.NaN])],
    ['an expanded uncertainty below zero', () => expandedUncertainty(-1, 5, 0.95)],
    ['a t quantile at a chance of 2', () => studentTQuantile(2, 5)],
    ['a cost matrix of ragged rows', () => costMatrix([[1, 2], [3]])],
    ['a chain without links', () => linearChain([])],
    ['individuals limits of nothing', () => individualsLimits({ values: [] })],
    ['a class that is none', () => classLimits('Q7', 25)],
    ['a class at no size', () => classLimits('H7', -1)],
    ['a verdict between crossed limits', () => verdictOf(5, { lowerPm: 9, upperPm: 1 }, 0)],
    ['a verdict on half a picometre', () => verdictOf(0.5, { upperPm: 1 }, 0)],
    [
      'a drift of pieces out of order',
      () => driftSinceEvent({ ordinals: [2, 1], sizesMm: [0, 0], confidence: 0.95 }),
    ],
    [
      'a size at NaN degrees',
      () =>
        sizeAtTemperature({
          size20Mm: 10,
          expansionPerC: 1e-5,
          temperatureC: Number.NaN,
        }),
    ],
  ];

  it.each(nothing)('is refused: %s', (_, run) => {
    try {
      expect(run()).toBe('refused');
    } catch (error) {
      expect(error).toBeInstanceOf(MathsInputError);
      // `<function> requires <what>, got <value>`, without a full stop, and a stable `file/reason`.
      expect((error as MathsInputError).message).toMatch(/^[a-zA-Z0-9]+ requires .+[^.]$/s);
      expect((error as MathsInputError).code).toMatch(/^[a-z0-9-]+\/[a-z0-9-]+$/);
    }
  });
});
