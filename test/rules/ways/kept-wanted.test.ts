import { describe, expect, it } from 'vitest';
import { saidOfFit } from '@/app/ui/fit-ways/said-of-fit';
import { keptWanted } from '@/lib/rules/ways/kept-wanted';
import { readWanted, type FitSaid } from '@/lib/rules/ways/read-wanted';
import type { Fit } from '@/lib/schema/fit';
import { exampleSheet } from '../../rules/example-sheet';

const um = 1_000_000;
const shown = {
  mm: { unit: 'mm', decimal: '.' },
  in: { unit: 'in', decimal: '.' },
} as const;
/** 7.5, 10.25 and 12.5 um: more than three places of a millimetre, and no end in inches. */
const fit: Fit = {
  ...exampleSheet().fits[0]!,
  minPm: 7.5 * um,
  aimPm: 10.25 * um,
  maxPm: 12.5 * um,
};

function changed(
  unit: 'mm' | 'in',
  from: Fit,
  over: (first: FitSaid) => Partial<FitSaid>,
  mm = 18,
) {
  const first = saidOfFit(from, shown[unit]);
  const said = { ...first, ...over(first) };
  const read = readWanted(said, { nominalPm: mm * 1000 * um, ...shown[unit] });
  if (read.kind === 'wrong') throw new Error(JSON.stringify(read.wrong));
  return keptWanted(from, first, said, read.fields);
}

describe('a fit that is changed in one figure', () => {
  it('is filled in with every digit', () => {
    expect(saidOfFit(fit, shown.mm).limits).toEqual({
      min: '0.0075',
      max: '0.0125',
      aim: '0.01025',
    });
    expect(saidOfFit(fit, shown.in).limits.min).toBe('0.0002953');
  });

  it.each(['mm', 'in'] as const)('keeps the others exactly, in %s', (unit) => {
    const max = unit === 'mm' ? '0.015' : '0.0006';
    const now = changed(unit, fit, ({ limits }) => ({ limits: { ...limits, max } }));
    expect(now).toMatchObject({ minPm: 7.5 * um, aimPm: 10.25 * um });
    expect(now.maxPm).toBe(unit === 'mm' ? 15 * um : 15_240_000);
    const other = changed(unit, fit, () => ({ governs: 'mean' }));
    expect(other).toMatchObject({ minPm: 7.5 * um, maxPm: 12.5 * um, aimPm: 10.25 * um });
  });

  it('takes the middle where the aim was cleared, and never an aim outside', () => {
    const middle = changed('mm', fit, ({ limits }) => ({ limits: { ...limits, aim: '' } }));
    expect(middle.aimPm).toBe(10 * um);
    // The most as it is shown in inches is a hair over the most that is kept.
    const { max } = saidOfFit(fit, shown.in).limits;
    const edge = changed('in', fit, ({ limits }) => ({ limits: { ...limits, aim: max } }));
    expect(edge.aimPm).toBeLessThanOrEqual(edge.maxPm);
  });

  it('said by classes keeps its aim while its classes stay, and moves it with them', () => {
    const classes: Fit = {
      ...fit, way: 'classes', classes: 'H7/g6', minPm: 6 * um, maxPm: 35 * um, aimPm: 12.345678 * um,
      atPm: 18_000 * um,
    }; // prettier-ignore
    const same = changed('in', classes, () => ({ governs: 'mean' }));
    expect(same).toMatchObject({ minPm: 6 * um, maxPm: 35 * um, aimPm: 12_345_678 });
    const aimed = changed('mm', classes, () => ({ classesAim: '0.02' }));
    expect(aimed).toMatchObject({ minPm: 6 * um, maxPm: 35 * um, aimPm: 20 * um });
    expect(changed('mm', classes, () => ({ classesAim: '' })).aimPm).toBe(20.5 * um);
  });

  it('said by a rule keeps its figures while the rule is only called otherwise', () => {
    const rule: Fit = {
      ...fit, way: 'rule', ruleName: 'Sliding', ruleFixedPm: 7_620_001, ruleMinNmPerMm: 250,
      ruleAimNmPerMm: 450, ruleMaxNmPerMm: 650, minPm: 12_120_001, aimPm: 15_720_001, maxPm: 19_320_001,
      atPm: 18_000 * um,
    }; // prettier-ignore
    const called = changed('in', rule, () => ({ ruleName: 'Ours' }), 20);
    expect(called).toMatchObject({
      ruleName: 'Ours', ruleFixedPm: 7_620_001, minPm: 12_120_001, maxPm: 19_320_001, atPm: 18_000 * um,
    }); // prettier-ignore
    const inInches = changed('in', rule, (first) => ({ rule: { ...first.rule, max: '1' } }));
    expect(inInches).toMatchObject({
      ruleFixedPm: 7_620_001,
      minPm: 12_120_001,
      maxPm: 25_620_001,
    });
    // Another constant is taken as typed, and all is worked out anew: 10 and 0.25, 0.45, 0.65 of 18 um.
    const other = changed('mm', rule, (first) => ({ rule: { ...first.rule, fixed: '0.01' } }));
    expect(other).toMatchObject({
      ruleFixedPm: 10 * um,
      minPm: 14.5 * um,
      aimPm: 18.1 * um,
      maxPm: 21.7 * um,
    });
    const steeper = changed('mm', rule, (first) => ({ rule: { ...first.rule, max: '1' } }));
    expect(steeper).toMatchObject({ ruleFixedPm: 7_620_001, minPm: 12_120_001, maxPm: 25_620_001 });
  });

  it('is what was typed where another way is chosen', () => {
    const now = changed('mm', fit, () => ({ way: 'classes', classes: 'H7/g6' }));
    expect(now).toMatchObject({ way: 'classes', minPm: 6 * um, maxPm: 35 * um });
  });
});
