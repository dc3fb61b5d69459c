import { describe, expect, it } from 'vitest';
import { ruleText, saidOfFit } from '@/app/ui/fit-ways/said-of-fit';
import { nothingSaid, readWanted } from '@/lib/rules/ways/read-wanted';
import { starterRules } from '@/lib/rules/ways/starter-rules';
import { exampleSheet } from '../../rules/example-sheet';

const um = 1_000_000;
const mm = { unit: 'mm', decimal: '.' } as const;
const at18 = { nominalPm: 18_000 * um, ...mm };
const fit = exampleSheet().fits[0]!;

describe('saidOfFit', () => {
  it('has nothing said of a new fit', () => {
    expect(saidOfFit(null, mm)).toEqual(nothingSaid());
  });

  it('comes back to the same fit for each of the three ways', () => {
    const ways = [
      fit,
      { ...fit, way: 'classes' as const, classes: 'H7/g6', minPm: 6 * um, maxPm: 35 * um, aimPm: 12 * um },
      {
        ...fit, way: 'rule' as const, ruleName: 'Sliding', ruleFixedPm: 7_620_000,
        ruleMinNmPerMm: 250, ruleAimNmPerMm: 450, ruleMaxNmPerMm: 650,
        minPm: 12_120_000, aimPm: 15_720_000, maxPm: 19_320_000,
      },
    ]; // prettier-ignore
    for (const one of ways) {
      const read = readWanted(saidOfFit(one, mm), at18);
      const { way, minPm, maxPm, aimPm, governs } = one;
      expect(read).toMatchObject({
        kind: 'wanted',
        fields: { way, minPm, maxPm, aimPm, governs },
      });
    }
  });

  it('knows a starter again by its name, and types no constant of nothing', () => {
    const rule = { ...fit, way: 'rule' as const, ruleName: 'Running', ruleAimNmPerMm: 1000 };
    expect(saidOfFit(rule, mm)).toMatchObject({
      ruleKey: 'running',
      rule: { fixed: '', aim: '1' },
    });
    expect(ruleText(starterRules[7]!, { unit: 'in', decimal: ',' })).toEqual({
      fixed: '−0,0005',
      min: '−1',
      aim: '−0,75',
      max: '−0,5',
    });
  });
});
