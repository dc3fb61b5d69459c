import { describe, expect, it } from 'vitest';
import { blindTaken, blindWords } from '@/lib/text/bench-blind';
import { questionWords, whichWords } from '@/lib/text/bench-entry';
import { gaugeFacts } from '@/lib/text/bench-gauge';
import { benchKeys } from '@/lib/text/bench-keys';
import { pedalKeyWords, pedalNames, pedalWords } from '@/lib/text/bench-pedal';
import {
  slipAnswers,
  slipQuestion,
  slipReasons,
  slipSays,
  type SlipFactsShown,
} from '@/lib/text/bench-slip';
import { standingWords } from '@/lib/text/bench-standing';
import { spindleWords, targetWords } from '@/lib/text/bench-target';
import { lastEntryWords } from '@/lib/text/bench-where';
import { fateWords } from '@/lib/text/cut-past-words';
import { dialRuleWords } from '@/lib/text/dial-rule-words';
import { gaugeWords } from '@/lib/text/gauge-words';
import { stationWords } from '@/lib/text/station-words';
import { cellDecisionWords, measureWords, noPartnerWords } from '@/lib/text/step';
import { parseLength, type LengthMeaning } from '@/lib/units/parse-length';

const um = 1_000_000;
const mm = 1_000_000_000;
const shown = { unit: 'mm', decimal: '.' } as const;
function size(text: string): LengthMeaning {
  const parsed = parseLength(text, { unit: 'mm', decimal: '.' });
  if (parsed.kind !== 'length') throw new Error(`${text} is no length`);
  return parsed;
}

describe('what a typed text may be', () => {
  it.each([
    ['mark-thousands', 'is that mark for decimals or for thousands?'],
    ['marks-against-setting', 'is this the size?'],
    ['space-thousands', 'is that one number?'],
    ['fraction-unit', 'a fraction of an inch, or of a millimetre?'],
    ['unit-tenths', 'tenths of a thou, or of a millimetre?'],
    ['unit-mil', 'thousandths of an inch, or millimetres?'],
    ['last-digits', 'the last figures of which size?'],
    ['gauge-unit', 'in which unit did the gauge stand?'],
    ['sign-large', 'the size itself, or from the nominal?'],
  ] as const)('is asked: %s', (code, asks) => {
    expect(questionWords(' 18 ', code, [], shown).title).toBe(`18: ${asks}`);
  });

  it('is named while last figures are typed', () => {
    expect(whichWords([size('18.001'), size('17.901')], shown)).toBe('18.001 or 17.901?');
  });
});

describe('a held reading', () => {
  const facts: SlipFactsShown = {
    kind: 'half or double',
    valuePm: 9 * mm,
    insteadPm: 18 * mm,
    stepPm: null,
    stopsAtPm: null,
    expected: { from: 'readings', lowPm: 18 * mm, highPm: 18_002 * um },
    others: 2,
    othersMeanPm: 18_001 * um,
    elsewhere: null,
    gauge: { name: 'Mic 1', kind: 'micrometer', unit: 'mm', resolutionPm: um },
    resolutionPm: um,
  };
  const of = (over: Partial<SlipFactsShown>) => slipQuestion({ ...facts, ...over }, shown);

  it.each<[string, Partial<SlipFactsShown>, string, string[]]>([
    ['half', {}, 'Half the size?', ['As typed', '9.000', 'Twice that', '18.000']],
    [
      'double',
      { valuePm: 36 * mm },
      'Twice the size?',
      ['As typed', '36.000', 'Half of it', '18.000'],
    ],
    [
      'another feature',
      { kind: 'wrong feature', insteadPm: null },
      'Is this another feature?',
      ['As typed', '9.000'],
    ],
    [
      'a feature that is known',
      { kind: 'wrong feature', insteadPm: null, elsewhere: 'L5 bore' },
      'Is this L5 bore?',
      ['As typed', '9.000'],
    ],
    [
      'one figure',
      { kind: 'one figure', valuePm: 18_300 * um },
      'One figure wrong?',
      ['As typed', '18.300', 'It may be', '18.000'],
    ],
    [
      'figures swapped, nobody knows how',
      { kind: 'swapped figures', insteadPm: null },
      'Two figures swapped?',
      ['As typed', '9.000'],
    ],
    [
      'a rod of 25 more',
      {
        kind: 'wrong frame',
        stepPm: 25 * mm,
        insteadPm: 34 * mm,
        gauge: { ...facts.gauge, kind: 'bore gauge' },
      },
      'Another rod?',
      ['As typed', '9.000', '25 more', '34.000'],
    ],
    [
      'a turn more',
      { kind: 'thimble turn', stepPm: 500 * um, insteadPm: 9_500 * um },
      'One turn of the thimble?',
      ['As typed', '9.000', 'One turn more', '9.500'],
    ],
  ])('is asked about: %s', (_, over, title, rows) => {
    const asked = of(over);
    expect(asked.title).toBe(title);
    expect(asked.rows.flatMap(({ label, figure }) => [label, figure])).toEqual([
      ...rows,
      'The other two',
      '18.001',
    ]);
  });

  it('is held against one other, seven, the limits, or nothing', () => {
    const row = (over: Partial<SlipFactsShown>) => of({ insteadPm: null, ...over }).rows[1];
    expect(row({ others: 1 })).toEqual({ label: 'The other one', figure: '18.001' });
    expect(row({ others: 7, othersMeanPm: null })).toEqual({
      label: 'The other 7',
      figure: '18.000',
      note: 'within 0.002',
    });
    const limits = { from: 'limits', lowPm: 18 * mm, highPm: 18_018 * um } as const;
    expect(row({ expected: limits })).toEqual({
      label: 'The limits',
      figure: '18.000',
      note: 'to 18.018',
    });
    expect(row({ expected: { ...limits, from: 'nominal' } })).toBeUndefined();
    const far = { kind: 'far off', repeatPm: um } as const;
    expect(of({ ...far, insteadPm: null }).rows[2]).toEqual({
      label: 'Mic 1 repeats',
      figure: '± 0.002',
    });
    expect(of({ ...far, insteadPm: null, expected: limits }).rows).toHaveLength(2);
  });

  it('is answered in one tap', () => {
    expect(slipSays).toBe(
      'Kept as typed, left out of the size until you say. Nobody alters it for you.',
    );
    expect(Object.values(slipAnswers)).toEqual([
      'Measure it again',
      'Keep it as it is',
      'It was a slip, strike it out',
      'I mistyped, it reads …',
    ]);
    expect(slipReasons.usual).toEqual([
      'measured twice, the same',
      'the part is so',
      'the gauge is right',
    ]);
  });

  it.each([
    [{ state: 'held', heldAs: 'far off', reason: '' }, 'held: far off, '],
    [{ state: 'held', heldAs: null, reason: '' }, 'held: in doubt, '],
    [{ state: 'struck', heldAs: null, reason: 'a burr' }, 'struck out, a burr, '],
    [{ state: 'struck', heldAs: null, reason: '' }, 'struck out, '],
    [{ state: 'counted', heldAs: null, reason: '' }, ''],
  ] as const)('is in a list as it stands: %j', (stands, begins) => {
    const rest = { typed: '18.004 ', firstTyped: null, gauge: 'Mic 1', time: '10:42' };
    expect(standingWords({ ...stands, ...rest })).toBe(`${begins}typed 18.004, Mic 1, 10:42`);
  });
});

describe('places and pieces on the Bench', () => {
  it.each([
    ['17.999', 'counted', false, '17.999'],
    ['17.999', 'counted', true, '17.999, next'],
    ['17.999', 'held', false, '17.999, held'],
    ['17.999', 'struck', true, '17.999, struck out, next'],
    [null, 'empty', false, 'not measured'],
    [null, 'empty', true, 'not measured, next'],
  ] as const)('are read aloud: %s %s %s', (text, state, isNext, says) => {
    expect(stationWords(text, state, isNext)).toBe(says);
  });

  it('are hidden, or lead to the last entry', () => {
    expect(blindTaken).toBe('taken');
    expect(blindWords({ taken: 0, of: 1 }).says).toBe('Nothing is shown until it is taken.');
    expect(blindWords({ taken: 0, of: 6 }).says).toBe('Nothing is shown until all 6 are taken.');
    expect(blindWords({ taken: 2, of: 6 }).says).toBe('Kept. 4 more, then all are shown.');
    expect(blindWords({ taken: 6, of: 6 }).says).toBe('Answer what is asked, then all are shown.');
    expect(lastEntryWords('P5')).toBe(
      'Nothing was entered here. The last entry is on P5: once more takes it back.',
    );
  });

  it.each([
    ['held', 'bore', 'bottom', 'bore: a reading is held. Say whether it counts.'],
    [
      'unsure',
      'bore',
      'top',
      'bore is 18.018 ± 0.002, too near 18.018 to say. Measure it again, finer.',
    ],
    ['out', 'bore', 'top', 'bore is 0.004 large. Make its partner to suit, or sleeve it.'],
    [
      'out',
      'outside',
      'bottom',
      'bore is 0.004 small. Find another partner for it, or make it again.',
    ],
  ] as const)('ask for a decision: %s of a %s', (kind, featureKind, side, says) => {
    const decision = {
      kind,
      featureKind,
      side,
      mark: 'L1',
      featureName: 'Bore',
      size: '18.018 ± 0.002',
      beyondPm: 4 * um,
      limitPm: 18_018 * um,
      resolutionPm: um,
    };
    expect(cellDecisionWords(decision, shown)).toEqual({ mark: 'L1', says });
    if (kind !== 'unsure') return;
    expect(cellDecisionWords({ ...decision, limitPm: null }, shown).says).toContain('its limit');
  });

  it('ask for a partner, for care and for the next measurement', () => {
    expect(noPartnerWords('P9', 'Piston in liner')).toEqual({
      mark: 'P9',
      says: 'suits no free partner (Piston in liner). Make a new one to it.',
    });
    expect(measureWords('P9', 'Outside')).toBe('Measure P9, outside');
    expect(spindleWords).toBe('Spindle stopped before you measure.');
    const target = {
      mark: 'P7',
      partner: 'L7',
      targetPm: 18 * mm,
      noLargerPm: 18_001 * um,
      noSmallerPm: 17_999 * um,
      provable: false,
      leftPm: null,
      kind: 'outside',
      resolutionPm: um,
    } as const;
    expect(targetWords(target, shown)).toMatchObject({
      between: 'These gauges cannot prove the fit: measure the partner finer.',
      brief: 'these gauges cannot prove it',
    });
  });

  it('have their fate said, and the dial where it stands', () => {
    expect(fateWords('P7', 'scrapped')).toBe(
      'P7 is scrapped. Its readings stay; it has no partner and is not counted.',
    );
    expect(fateWords('P7', 'sleeve')).toBe(
      'P7 waits for its sleeve. It has no partner until the sleeve is in and measured.',
    );
    expect(dialRuleWords({ standsAt: '0.10', turnTo: '0.15' }, false)).toEqual({
      stands: 'set to 0',
      turn: 'turn to 0.15',
      whole: 'Set the dial to 0. Turn to 0.15.',
    });
    expect(dialRuleWords({ standsAt: '0.10', turnTo: '0.15' }, true)).toMatchObject({
      stands: 'stands at 0.10',
      whole: 'The dial stands at 0.10. Turn to 0.15.',
    });
  });
});

describe('gauges, pedals and keys', () => {
  it('say the range as far as it is known', () => {
    const gauge = { unit: 'mm', resolutionPm: um, rangeLowPm: 25 * mm, rangeHighPm: null } as const;
    expect(gaugeFacts(gauge, shown)).toBe('0.001 mm, from 25');
    const upTo = { ...gauge, rangeLowPm: null, rangeHighPm: 12_700 * um };
    expect(gaugeFacts(upTo, { decimal: ',' })).toBe('0,001 mm, 0 to 12,7');
    const register = { ...gauge, uncertaintyPm: 300_000, checkedOn: '2026-03-14' };
    expect(gaugeWords(register, '.')).toEqual({
      resolution: '0.001 mm',
      uncertainty: '± 0.0003 mm',
      range: 'from 25 mm',
      checked: '14 March 2026',
    });
    const inch = { ...upTo, unit: 'in', resolutionPm: 2_540_000, uncertaintyPm: null } as const;
    expect(gaugeWords({ ...inch, checkedOn: null }, '.')).toEqual({
      resolution: '0.0001 inch',
      uncertainty: null,
      range: '0 to 0.5 inch',
      checked: null,
    });
    const open = { ...register, rangeLowPm: null, rangeHighPm: null };
    expect(gaugeWords(open, '.').range).toBe('');
  });

  it('name a pedal by what it does and by its key, with what is held', () => {
    expect(Object.values(pedalNames)).toEqual(['Log, or measure again', 'Next', 'Take back']);
    expect(Object.values(pedalWords)).toEqual([
      'Teach',
      'Press the pedal now.',
      'Leave it',
      'Forget the pedals',
      'no pedal',
    ]);
    const pedal = { code: 'KeyB', key: 'b', ctrl: true, alt: true, shift: true, meta: true };
    expect(pedalKeyWords(pedal)).toBe('Ctrl and Alt and Shift and Meta and B');
    const plain = { ...pedal, ctrl: false, alt: false, shift: false, meta: false };
    expect(pedalKeyWords({ ...plain, key: 'PageDown' })).toBe('Page Down');
    expect(pedalKeyWords({ ...plain, key: 'Unidentified', code: 'F13' })).toBe('F13');
  });

  it('list every key of the Bench with what it does', () => {
    expect(benchKeys.map(({ keys, does }) => `${keys}: ${does}`)).toEqual([
      'figures, signs: go to the entry, wherever you are',
      'Enter: logs; with nothing typed and all taken, goes on to the next',
      'Backspace: rubs out',
      'V: voids the last reading, or puts it back',
      'N, P: next or previous station',
      'Shift N, Shift P: next or previous in the order of measuring; Page Down and Page Up too',
      'F, Shift F: next or previous feature of this piece',
      'W, Shift W: the same feature on the next or previous workpiece',
      'arrows: move over the station map',
      'S: notes a spring pass',
      'L, *: only the last figures are typed, or whole sizes again',
      'D: what this device does: sound, letters, pedals, measuring unseen',
      'C: what to cut next; C again comes back',
      '1, 2: answer a question in the entry',
      'Alt 1 to Alt 7: the other sheets',
      'Esc: closes a list',
      '?: shows these',
    ]);
  });
});
