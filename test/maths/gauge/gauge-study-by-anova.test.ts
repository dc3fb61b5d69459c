import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crossedAnova } from '@/lib/maths/gauge/crossed-anova';
import { gaugeStudyByAnova } from '@/lib/maths/gauge/gauge-study-by-anova';
import { expectNear } from '../control/near';
import { manual } from './manual';

const studies = fc
  .tuple(
    fc.integer({ min: 2, max: 5 }),
    fc.integer({ min: 2, max: 4 }),
    fc.integer({ min: 2, max: 4 }),
    fc.infiniteStream(fc.integer({ min: -20, max: 20 })),
  )
  .map(([parts, operators, trials, stream]) =>
    Array.from({ length: parts }, () =>
      Array.from({ length: operators }, () =>
        Array.from({ length: trials }, () => stream.next().value),
      ),
    ),
  );

describe('crossedAnova', () => {
  it('gives the published sums of squares of the manual', () => {
    // AIAG MSA manual, analysis of variance table (from memory), four decimals.
    const table = crossedAnova(manual);
    expectNear(table.part.sumOfSquares, 88.3619, 6e-5);
    expectNear(table.operator.sumOfSquares, 3.1673, 6e-5);
    expectNear(table.interaction.sumOfSquares, 0.359, 6e-5);
    expectNear(table.repeatability.sumOfSquares, 2.7589, 6e-5);
    expectNear(table.total.sumOfSquares, 94.6471, 6e-5);
  });

  it('shares out the degrees of freedom', () => {
    const { part, operator, interaction, repeatability, total } = crossedAnova(manual);
    expect(
      [part, operator, interaction, repeatability, total].map((row) => row.degreesOfFreedom),
    ).toEqual([9, 2, 18, 60, 89]);
  });

  it('judges part and operator against the interaction, and that against the repeats', () => {
    // AIAG MSA manual: F 492.291, 79.406 and 0.4337 (from memory). Chance of the last by
    // scipy.stats.f.sf(0.433721030135, 18, 60) = 0.974106.
    const { part, operator, interaction } = crossedAnova(manual);
    expectNear(part.f, 492.291, 0.0006);
    expectNear(operator.f, 79.406, 0.0006);
    expectNear(interaction.f, 0.4337, 0.00006);
    expectNear(interaction.p, 0.97411, 1e-5);
    expect(part.p).toBeLessThan(1e-18);
    expect(operator.p).toBeLessThan(1e-8);
  });

  it('loses no square on the way', () => {
    fc.assert(
      fc.property(studies, (readings) => {
        const { part, operator, interaction, repeatability, total } = crossedAnova(readings);
        const rows = [part, operator, interaction, repeatability];
        const sum = rows.reduce((all, row) => all + row.sumOfSquares, 0);
        expectNear(sum, total.sumOfSquares, 1e-9 * (1 + total.sumOfSquares));
      }),
    );
  });

  it('does not mind a large common size', () => {
    // Whole readings stay exact when a thousand million is added, so not a digit may change.
    fc.assert(
      fc.property(studies, (readings) => {
        const moved = readings.map((part) => part.map((cell) => cell.map((value) => value + 1e9)));
        expect(crossedAnova(moved)).toEqual(crossedAnova(readings));
      }),
    );
  });

  it('leaves out F and chance when there is nothing to judge against', () => {
    const exact = [
      [
        [1, 1],
        [2, 2],
      ],
      [
        [3, 3],
        [4, 4],
      ],
    ];
    const table = crossedAnova(exact);
    expect(table.repeatability.meanSquare).toBe(0);
    expect(table.interaction).not.toHaveProperty('f');
    expect(table.part).not.toHaveProperty('p');
  });

  it('refuses a study with gaps under its own name', () => {
    expect(() =>
      crossedAnova([
        [
          [1, 2],
          [1, 2],
        ],
        [[1, 2]],
      ]),
    ).toThrow('crossedAnova requires');
  });
});

describe('gaugeStudyByAnova', () => {
  it('splits the variance of the manual as its mean squares say', () => {
    // By hand from the published mean squares 9.81799, 1.58363, 0.0199435 and 0.0459822.
    const { variance, setToZero } = gaugeStudyByAnova(manual).withInteraction;
    expectNear(variance.repeatability, 0.0459822, 1e-7);
    expectNear(variance.operator, (1.58363 - 0.0199435) / 30, 1e-6);
    expectNear(variance.part, (9.81799 - 0.0199435) / 9, 1e-6);
    expect(variance.interaction).toBe(0);
    expect(setToZero).toEqual(['interaction']);
  });

  it('counts an insignificant interaction with the repeats', () => {
    // Published (AIAG MSA, from memory): repeatability 0.199933, operator 0.226838, gauge 0.302373,
    // part 1.042327, total 1.085300; 27.86 % of the total, five sizes before truncation 4.87.
    const study = gaugeStudyByAnova(manual);
    expect(study.use).toBe('interactionPooled');
    const { sd, percentOfTotal, distinctSizes, setToZero } = study.interactionPooled;
    expectNear(sd.repeatability, 0.199933, 2e-6);
    expectNear(sd.operator, 0.226838, 2e-6);
    expectNear(sd.gauge, 0.302373, 2e-6);
    expectNear(sd.part, 1.042327, 2e-6);
    expectNear(sd.total, 1.0853, 2e-6);
    expectNear(percentOfTotal, 27.86, 0.005);
    expectNear(distinctSizes, 4.875, 0.001);
    expect(setToZero).toEqual([]);
  });

  it('keeps an interaction that is there', () => {
    // Constructed: operator 2 reads part 2 high by 10, repeats within 1.
    const readings = [
      [
        [0, 1],
        [0, 1],
        [1, 0],
      ],
      [
        [0, 1],
        [10, 11],
        [0, 1],
      ],
      [
        [5, 6],
        [5, 6],
        [6, 5],
      ],
    ];
    const study = gaugeStudyByAnova(readings);
    expect(study.use).toBe('withInteraction');
    // By hand: interaction of a lone excess d on r x c cells: MS = t d^2 (1-1/3)^2 / 4 with t = 2,
    // which is 2 * 100 * (4/9) / 4 = 200/9; repeats 0.5; component (200/9 - 0.5) / 2.
    expectNear(study.withInteraction.variance.interaction, (200 / 9 - 0.5) / 2, 1e-9);
  });

  it('names every component that it sets to zero', () => {
    // Constructed: cell means 0 1 / 1 0, so parts and operators are alike and only cross.
    const readings = [
      [
        [0, 0.1],
        [1, 1.1],
      ],
      [
        [1, 1.1],
        [0, 0.1],
      ],
    ];
    const { setToZero, variance } = gaugeStudyByAnova(readings).withInteraction;
    expect(setToZero).toEqual(['operator', 'part']);
    expect([variance.operator, variance.part]).toEqual([0, 0]);
  });

  it('adds up: gauge and parts make the total, and no variance is below zero', () => {
    fc.assert(
      fc.property(studies, (readings) => {
        const study = gaugeStudyByAnova(readings);
        for (const { variance, sd } of [study.withInteraction, study.interactionPooled]) {
          for (const value of Object.values(variance)) expect(value).toBeGreaterThanOrEqual(0);
          const { repeatability, operator, interaction, part, total } = variance;
          expectNear(repeatability + operator + interaction + part, total, 1e-9 * (1 + total));
          expectNear(sd.gauge ** 2, variance.gauge, 1e-9 * (1 + total));
          expectNear(variance.reproducibility, operator + interaction, 1e-9 * (1 + total));
        }
      }),
    );
  });

  it('counts six gauge deviations against a tolerance', () => {
    const { interactionPooled } = gaugeStudyByAnova(manual, 10);
    expectNear(interactionPooled.percentOfTolerance, 6 * 3.02372, 0.001);
  });
});
