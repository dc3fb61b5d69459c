import { describe, expect, it } from 'vitest';
import { readRule, ruleClearances } from '@/lib/rules/ways/read-rule';
import { isSaid, nothingSaid, readWanted, type FitSaid } from '@/lib/rules/ways/read-wanted';
import { starterRules } from '@/lib/rules/ways/starter-rules';

const um = 1_000_000;
const mm = 1_000_000_000;
const inch = 25_400_000_000;
const metric = { nominalPm: 18 * mm, decimal: '.', unit: 'mm' } as const;

const said = (over: Partial<FitSaid>): FitSaid => ({ ...nothingSaid(), ...over });

describe('readRule', () => {
  it('reads a constant in the unit of the job and slopes in either unit', () => {
    const text = { fixed: '0.5 thou', min: '0.5 thou/in', aim: '1 µm/mm', max: '1.5' };
    expect(readRule(text, metric)).toEqual({
      kind: 'rule',
      rule: { fixedPm: 12_700_000, minNmPerMm: 500, aimNmPerMm: 1000, maxNmPerMm: 1500 },
    });
  });

  it('takes no constant for nothing', () => {
    const text = { fixed: ' ', min: '−1', aim: '-0.75', max: '-0.5' };
    expect(readRule(text, metric)).toMatchObject({ rule: { fixedPm: 0, minNmPerMm: -1000 } });
  });

  it.each([
    [{ fixed: 'x' }, 'fixed'],
    [{ aim: '' }, 'aim'],
    [{ min: '1 furlong' }, 'min'],
    [{ max: '1001' }, 'max'],
    [{ min: '2' }, 'min'],
    [{ aim: '0.4' }, 'min'],
    [{ aim: '1.6' }, 'max'],
    [{ min: '1.5', aim: '1.5' }, 'min'],
  ])('says which field of %o is wrong', (over, field) => {
    const text = { fixed: '', min: '0.5', aim: '1', max: '1.5', ...over };
    expect(readRule(text, metric)).toMatchObject({ kind: 'wrong', field });
  });
});

describe('ruleClearances', () => {
  it('gives half, one and one and a half thou on an inch for a thou an inch', () => {
    const rule = starterRules.find(({ key }) => key === 'thou')!;
    expect(ruleClearances(rule, inch)).toEqual({
      minPm: 12_700_000,
      aimPm: 25_400_000,
      maxPm: 38_100_000,
    });
  });

  it('gives what the handbook of the model engineers gives as examples on an inch', () => {
    // As quoted at second hand: push 0.15 + 0.35 = 0.5 thou clear, shrink 0.5 + 1.5 = 2 thou tight.
    const aim = (key: string) =>
      ruleClearances(
        starterRules.find((rule) => rule.key === key)!,
        inch,
      ).aimPm / 25_400_000;
    expect(aim('push')).toBe(0.5);
    expect(aim('shrink')).toBe(-2);
  });

  it('has every starter in order, loosest first, and none alike', () => {
    const aims = starterRules.slice(1).map((rule) => ruleClearances(rule, 25 * mm).aimPm);
    expect(aims).toEqual([...aims].sort((a, b) => b - a));
    expect(new Set(aims).size).toBe(aims.length);
  });
});

describe('readWanted', () => {
  it('keeps a fit said by limits with nothing else', () => {
    const read = readWanted(said({ limits: { min: '0.008', max: '0.012', aim: '' } }), metric);
    expect(read).toEqual({
      kind: 'wanted',
      fields: {
        way: 'limits', classes: null, minPm: 8 * um, maxPm: 12 * um, aimPm: 10 * um,
        governs: 'extreme', atPm: null, ruleName: null, ruleFixedPm: null, ruleMinNmPerMm: null,
        ruleAimNmPerMm: null, ruleMaxNmPerMm: null,
      }, // prettier-ignore
    });
  });

  it('keeps a pair of classes with the nominal it was worked out at, the aim in the middle', () => {
    const read = readWanted(said({ way: 'classes', classes: 'g6 H7' }), metric);
    // 18: H7 +18/0, g6 -6/-17 (ISO 286-2).
    expect(read).toMatchObject({
      fields: {
        way: 'classes', classes: 'H7/g6', minPm: 6 * um, maxPm: 35 * um, aimPm: 20.5 * um,
        atPm: 18 * mm, ruleName: null,
      }, // prettier-ignore
    });
  });

  it('takes an aim within the classes, and refuses one outside', () => {
    const by = (classesAim: string) =>
      readWanted(said({ way: 'classes', classes: 'H7/g6', classesAim }), metric);
    expect(by('0.012')).toMatchObject({ fields: { aimPm: 12 * um } });
    expect(by('0.036')).toMatchObject({ wrong: { field: 'aim', problem: 'aim outside' } });
    expect(by('a')).toMatchObject({ wrong: { field: 'aim', problem: { kind: 'error' } } });
  });

  it('keeps a rule as it stood, so that the fit does not move when the rule does', () => {
    const rule = { fixed: '0.001', min: '0.5', aim: '1', max: '1.5' };
    const read = readWanted(said({ way: 'rule', rule, ruleName: 'Ours' }), metric);
    expect(read).toMatchObject({
      fields: {
        way: 'rule', minPm: 10 * um, aimPm: 19 * um, maxPm: 28 * um, atPm: 18 * mm,
        ruleName: 'Ours', ruleFixedPm: um, ruleMinNmPerMm: 500, ruleAimNmPerMm: 1000,
        ruleMaxNmPerMm: 1500, classes: null,
      }, // prettier-ignore
    });
  });

  it('says what is wrong with each way', () => {
    const wrong = (over: Partial<FitSaid>, at: object = {}) => {
      const read = readWanted(said(over), { ...metric, ...at });
      return read.kind === 'wrong' ? read.wrong : null;
    };
    expect(wrong({})).toMatchObject({ way: 'limits', field: 'min' });
    expect(wrong({ way: 'classes', classes: 'H7' })).toMatchObject({ fault: { code: 'alone' } });
    expect(wrong({ way: 'rule' })).toMatchObject({ way: 'rule', field: 'aim' });
    const rule = { fixed: '', min: '0.5', aim: '1', max: '1.5' };
    expect(wrong({ way: 'rule', rule }, { nominalPm: null })).toEqual({
      way: 'rule',
      field: 'nominal',
    });
  });
});

describe('isSaid', () => {
  it('looks only at the way that is chosen', () => {
    expect(isSaid(nothingSaid())).toBe(false);
    expect(isSaid(said({ classes: 'H7/g6' }))).toBe(false);
    expect(isSaid(said({ way: 'classes', classes: 'H7' }))).toBe(true);
    expect(isSaid(said({ way: 'rule' }))).toBe(false);
    expect(isSaid(said({ way: 'rule', rule: { fixed: '', min: '', aim: '1', max: '' } }))).toBe(
      true,
    );
    expect(isSaid(said({ limits: { min: '', max: '0.1', aim: '' } }))).toBe(true);
  });
});
