import { describe, expect, it } from 'vitest';
import { quantityWords } from '@/lib/text/quantity-words';
import {
  classesEchoWords,
  classesFaultWords,
  clearRange,
  fixedFigure,
  nearPairWords,
  nominalsDifferWords,
  practiceWords,
  ruleFaultWords,
  ruleFieldWords,
  ruleWords,
  ruleWorkingWords,
  saidWords,
  slopeRangeWords,
  slopeWords,
  tightCareWords,
} from '@/lib/text/ways-words';

const mm = { unit: 'mm', decimal: '.' } as const;
const inch = { unit: 'in', decimal: ',' } as const;
const um = 1_000_000;
const of18 = 18_000 * um;

describe('ruleFieldWords', () => {
  it('names each field with what is typed there, in the unit of the job', () => {
    expect(ruleFieldWords('mm')).toEqual([
      ['fixed', 'Constant', 'mm; empty: none'],
      ['min', 'Least slope', 'µm per mm'],
      ['aim', 'Aimed slope', 'µm per mm'],
      ['max', 'Most slope', 'µm per mm'],
    ]);
    expect(ruleFieldWords('in').map(([, , hint]) => hint)).toEqual([
      'in; empty: none',
      'thou per inch',
      'thou per inch',
      'thou per inch',
    ]);
  });
});

describe('classesFaultWords', () => {
  it.each([
    [{ code: 'empty' }, 'Type a hole and a shaft, such as H7/g6.'],
    [{ code: 'no-nominal' }, 'The bore needs a size before the limits of its class are known.'],
    [
      { code: 'character', character: '+' },
      '"+" is no part of a class. A pair is letters and a grade, twice: H7/g6.',
    ],
    [{ code: 'no-grade', text: 'H' }, 'H has no grade behind it: H7, for one.'],
    [
      { code: 'mixed-case', text: 'Js' },
      'Js: both letters are capital for a hole, or both small for a shaft.',
    ],
    [{ code: 'letters', letters: 'W' }, 'nominal 18: no W in the standard.'],
    [{ code: 'not-defined', text: 't6' }, 'nominal 18: no t6 in the standard.'],
    [{ code: 'grade', text: 'H19' }, 'H19: grades run from 01 to 18.'],
    [
      { code: 'alone', text: 'H7', side: 'internal' as const },
      'H7 is a hole alone. Put the shaft beside it: H7/g6.',
    ],
    [
      { code: 'alone', text: 'g6', side: 'external' as const },
      'g6 is a shaft alone. Put the hole beside it, with a capital: H7/g6.',
    ],
    [
      { code: 'same-side', texts: ['H7', 'G6'] as const, side: 'internal' as const },
      'H7 and G6 are both holes. A shaft has a small letter.',
    ],
    [
      { code: 'same-side', texts: ['h7', 'g6'] as const, side: 'external' as const },
      'h7 and g6 are both shafts. A hole has a capital.',
    ],
    [{ code: 'too-many', text: 'h5' }, 'One hole and one shaft; h5 is one too many.'],
  ])('says of %o what it is', (fault, words) => {
    expect(classesFaultWords(fault, of18, mm)).toBe(words);
  });

  it('says where the tables end', () => {
    expect(classesFaultWords({ code: 'size' }, 3_200_000 * um, mm)).toBe(
      'nominal 3200: the standard ends at 3150 mm.',
    );
  });

  it('says the nominal in the unit of the job', () => {
    const fault = { code: 'letters', letters: 'q' };
    expect(classesFaultWords(fault, 12_700 * um, inch)).toBe('nominal 0,5: no q in the standard.');
    expect(classesFaultWords(fault, null, mm)).toBe('no q in the standard.');
  });
});

describe('classesEchoWords', () => {
  const read = {
    hole: { text: 'H7', upperPm: 18 * um, lowerPm: 0 },
    shaft: { text: 'g6', upperPm: -6 * um, lowerPm: -17 * um },
    minPm: 6 * um,
    maxPm: 35 * um,
    fit: 'clearance',
  };

  it('gives limits and clearances with the nominal filled in', () => {
    expect(classesEchoWords(read, of18, mm)).toEqual({
      hole: 'Hole H7: 18.000 to 18.018 mm',
      shaft: 'Shaft g6: 17.983 to 17.994 mm',
      clearance: 'Clearance fit: 0.006 to 0.035 clear',
    });
    expect(classesEchoWords({ ...read, fit: 'transition' }, of18, inch)).toMatchObject({
      hole: 'Hole H7: 0,7087 to 0,7094 inches',
      clearance: 'Transition fit: 0,0002 to 0,0014 clear',
    });
    expect(classesEchoWords({ ...read, fit: 'interference' }, of18, mm).clearance).toMatch(
      /^Interference fit/,
    );
  });
});

describe('clearances in words', () => {
  it('calls a minus tight', () => {
    expect(clearRange(6 * um, 35 * um, mm)).toBe('0.006 to 0.035 clear');
    expect(clearRange(-5 * um, 13 * um, mm)).toBe('0.005 tight to 0.013 clear');
    expect(clearRange(-29 * um, 0, mm)).toBe('0.000 to 0.029 tight');
  });

  it('keeps half a micrometre of a class', () => {
    // ISO 286-2, js6 on 18: ±5.5 µm, and H7 0 to 18 µm.
    expect(clearRange(-5_500_000, 23_500_000, mm)).toBe('0.0055 tight to 0.0235 clear');
  });

  it('says whether a near pair stays inside what is wanted', () => {
    const pair = { text: 'H7/g6', minPm: 6 * um, maxPm: 35 * um };
    expect(nearPairWords({ ...pair, inside: true }, mm)).toBe('H7/g6, 0.006 to 0.035 clear');
    expect(nearPairWords({ ...pair, inside: false }, mm)).toMatch(/, not all inside$/);
  });

  it('says which nominal counts where there are two', () => {
    expect(nominalsDifferWords(of18, 17_950 * um, mm)).toBe(
      "The bore is 18 and the shaft 17.95 mm: classes are worked out on the bore's.",
    );
  });
});

describe('a rule in words', () => {
  const rule = { fixedPm: 25_400_000, minNmPerMm: 1100, aimNmPerMm: 1500, maxNmPerMm: 1900 };
  const press = { fixedPm: -12_700_000, minNmPerMm: -1000, aimNmPerMm: -750, maxNmPerMm: -500 };

  it('has the same figure in either unit', () => {
    expect(slopeWords(1500, mm)).toBe('1.5 µm per mm');
    expect(slopeWords(-750, inch)).toBe('−0,75 thou per inch');
  });

  it('is one line', () => {
    expect(ruleWords(rule, mm)).toBe('0.0254 + 1.5 µm per mm');
    expect(ruleWords(press, mm)).toBe('−0.0127 − 0.75 µm per mm');
    expect(ruleWords({ fixedPm: 0, aimNmPerMm: -750 }, mm)).toBe('−0.75 µm per mm');
    expect(fixedFigure(25_400_000, inch)).toBe('0,001');
    expect(slopeRangeWords(press, inch)).toBe('slope −1 to −0,5');
  });

  it('shows its working', () => {
    const clearances = { minPm: 45_200_000, aimPm: 52_400_000, maxPm: 59_600_000 };
    expect(ruleWorkingWords(rule, clearances, of18, mm)).toEqual([
      { name: 'Least', working: '0.0254 + 1.1 µm per mm × 18', figure: '0.0452' },
      { name: 'Aim', working: '0.0254 + 1.5 µm per mm × 18', figure: '0.0524' },
      { name: 'Most', working: '0.0254 + 1.9 µm per mm × 18', figure: '0.0596' },
    ]);
    const tight = { minPm: -30_700_000, aimPm: -26_200_000, maxPm: -21_700_000 };
    expect(ruleWorkingWords(press, tight, of18, mm)[1]).toEqual({
      name: 'Aim',
      working: '−0.0127 − 0.75 µm per mm × 18',
      figure: '−0.0262',
    });
    expect(ruleWorkingWords({ ...press, fixedPm: 0 }, tight, of18, mm)[0]!.working).toBe(
      '−1 µm per mm × 18',
    );
  });

  it('says what is wrong with a figure', () => {
    const error = (code: 'unit' | 'empty', character = '') =>
      ({ kind: 'error', code, character }) as const;
    expect(ruleFaultWords('order', '')).toBe(
      'The slopes go least, aim, most, and least and most differ.',
    );
    expect(ruleFaultWords('too-steep', '1001')).toBe(
      '1001 is more than the whole diameter. Look at the point.',
    );
    expect(ruleFaultWords('needs-nominal', '')).toBe(
      'The bore needs a size before a rule can be worked out.',
    );
    expect(ruleFaultWords(error('unit', 'furlong'), '1 furlong')).toBe(
      '"furlong" is no unit known here. Type a slope such as 1.5 thou per inch.',
    );
    expect(ruleFaultWords({ kind: 'error', code: 'no-digits', character: 'x' } as never, 'x')).toBe(
      '"x" is not a size at "x". Type it again.',
    );
  });

  it('is offered as common practice', () => {
    expect(practiceWords).toBe('common practice, yours to overrule');
  });
});

describe('quantityWords', () => {
  it.each([
    ['empty', '', 'Type a figure.'],
    [
      'two-ways',
      '1,250',
      '1,250 can be read in two ways. Type it without the mark that groups the figures.',
    ],
    ['too-fine', '0.0001', '"0.0001" is finer than this notebook keeps. Type fewer figures.'],
    ['unit', '1 x', '"q" is no unit known here. Type a figure.'],
    ['not-a-number', '1..', '"1.." is not a figure at "q". Type a figure.'],
  ] as const)('says of %s', (code, text, words) => {
    expect(quantityWords({ kind: 'error', code, character: 'q' }, text, 'a figure')).toBe(words);
  });

  it('names no character where there is none', () => {
    const trouble = { kind: 'error', code: 'not-a-number', character: '' } as const;
    expect(quantityWords(trouble, '-', 'a figure')).toBe('"-" is not a figure. Type a figure.');
  });
});

describe('saidWords', () => {
  it('says how a fit was said, and nothing where its clearances say it all', () => {
    expect(saidWords({ way: 'classes', classes: 'H7/g6', atPm: of18 }, mm)).toBe(
      'Said as H7/g6 on 18 mm.',
    );
    expect(saidWords({ way: 'classes', classes: 'H7/g6', atPm: null }, mm)).toBe('Said as H7/g6.');
    const rule = { ruleName: 'Running', ruleFixedPm: 25_400_000, ruleAimNmPerMm: 1500 };
    expect(saidWords({ way: 'rule', classes: null, atPm: of18, ...rule }, mm)).toBe(
      'By the rule "Running" on 18 mm: 0.0254 + 1.5 µm per mm.',
    );
    expect(saidWords({ way: 'limits', classes: null }, mm)).toBe('');
    expect(saidWords({ way: 'rule', classes: null }, mm)).toBe('');
  });
});

describe('tightCareWords', () => {
  it('is one sentence where a fit may be tight, and gives no leave', () => {
    expect(tightCareWords(-1)).toMatch(/^Tight fits store force: .* gives no leave\.$/);
    expect(tightCareWords(0)).toBeNull();
  });
});
