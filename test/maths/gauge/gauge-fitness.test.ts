import { describe, expect, it } from 'vitest';
import { gaugeFitness, type FitnessInput } from '@/lib/maths/gauge/gauge-fitness';
import { expectNear } from '../control/near';

const gauge: FitnessInput = { resolutionMm: 0.001, uExpandedMm: 0.002, toleranceMm: 0.02 };

describe('gaugeFitness', () => {
  it('is good up to a tenth of the tolerance, guarded up to a quarter, unfit above', () => {
    // FORMULAS of the reference material, section 12.
    const at = [0, 0.002, 0.0021, 0.005, 0.0051].map(
      (uExpandedMm) => gaugeFitness({ ...gauge, uExpandedMm }).fitness,
    );
    expect(at).toEqual(['good', 'good', 'guarded', 'guarded', 'unfit']);
  });

  it('is not good when one step is more than a tenth of the tolerance', () => {
    const coarse = gaugeFitness({ ...gauge, resolutionMm: 0.0021 });
    expect([coarse.fitness, coarse.tooCoarse]).toEqual(['guarded', true]);
    const fine = gaugeFitness({ ...gauge, resolutionMm: 0.002 });
    expect([fine.fitness, fine.tooCoarse]).toEqual(['good', false]);
  });

  it('takes a tenth typed in decimals for a tenth', () => {
    // A decimal over ten times itself may miss a tenth by one rounding.
    for (const tenth of [0.003, 0.7, 0.0001, 0.0123]) {
      const found = gaugeFitness({
        resolutionMm: tenth,
        uExpandedMm: tenth,
        toleranceMm: tenth * 10,
      });
      expect(found.fitness).toBe('good');
    }
  });

  it('says what share of the tolerance each takes', () => {
    const { uncertaintyShare, resolutionShare } = gaugeFitness(gauge);
    expectNear(uncertaintyShare, 0.1, 1e-15);
    expectNear(resolutionShare, 0.05, 1e-15);
  });

  it.each<[string, Partial<FitnessInput>, string]>([
    ['a tolerance of 0', { toleranceMm: 0 }, 'tolerance above zero, got 0'],
    ['an uncertainty below zero', { uExpandedMm: -1 }, 'uncertainty of zero or more, got -1'],
    [
      'a resolution that is no number',
      { resolutionMm: NaN },
      'resolution of zero or more, got NaN',
    ],
  ])('refuses %s', (_, broken, message) => {
    expect(() => gaugeFitness({ ...gauge, ...broken })).toThrow(message);
  });
});
