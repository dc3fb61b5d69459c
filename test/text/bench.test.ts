import { describe, expect, it } from 'vitest';
import { echoWords, questionWords, stepToTarget } from '@/lib/text/bench-entry';
import { entryErrorWords, type EntryError } from '@/lib/text/bench-entry-error';
import { gaugeFacts } from '@/lib/text/bench-gauge';
import { featureLine, keptWords, takenWords, type KeptFacts } from '@/lib/text/bench-head';
import { benchKeys } from '@/lib/text/bench-keys';
import { placeWords } from '@/lib/text/bench-place';
import { shapeWords } from '@/lib/text/bench-shape';
import {
  blindSlipQuestion,
  slipQuestion,
  type SlipFactsShown,
  mendedDoubtWords,
} from '@/lib/text/bench-slip';
import { standingWords } from '@/lib/text/bench-standing';
import { cutTroubleWords, targetWords } from '@/lib/text/bench-target';
import { beforeCutWords, notKeptWords, troubleWords } from '@/lib/text/bench-trouble';
import { timeOf } from '@/lib/text/when';
import { parseLength, type LengthMeaning, type ParsedLength } from '@/lib/units/parse-length';

const um = 1_000_000;
const mm = 1_000_000_000;
const shown = { unit: 'mm', decimal: '.' } as const;
const setting = { unit: 'mm', decimal: '.', nominalPm: 18 * mm } as const;

function meaning(text: string): LengthMeaning {
  const parsed = parseLength(text, setting);
  if (parsed.kind !== 'length') throw new Error(`${text} is no length`);
  return parsed;
}
function asked(text: string): ParsedLength & { kind: 'question' } {
  const parsed = parseLength(text, setting);
  if (parsed.kind !== 'question') throw new Error(`${text} is no question`);
  return parsed;
}

describe('placeWords', () => {
  const map = { stations: ['crown', 'skirt'], directions: ['A', 'B'] };

  it('names only what there is more than one of', () => {
    const at = { station: 'skirt', direction: 'A' };
    expect(placeWords(at, map)).toBe('skirt, across A');
    expect(placeWords(at, { ...map, directions: ['A'] })).toBe('skirt');
    expect(placeWords(at, { ...map, stations: ['skirt'] })).toBe('across A');
    expect(placeWords(at, { stations: ['skirt'], directions: ['A'] })).toBe('');
  });
});

describe('the words of the head', () => {
  it('say what a feature is made to', () => {
    const facts = { name: 'Outside', asDrawn: '18.000, to its liner' };
    expect(featureLine({ ...facts, partner: { mark: 'L5', made: true } })).toBe(
      'outside, made to L5',
    );
    expect(featureLine({ ...facts, partner: { mark: 'L7', made: false } })).toBe(
      'outside, make to L7',
    );
    expect(featureLine({ name: 'Bore', asDrawn: '18.000 +0.018 / 0', partner: null })).toBe(
      'bore, 18.000 +0.018 / 0',
    );
    expect(featureLine({ name: 'Bore', asDrawn: '', partner: null })).toBe('bore');
    expect(takenWords(4, 6)).toBe('4 of 6 taken');
  });

  it('say which of the two a reading has reached', () => {
    const at = '2026-03-14T10:42:00Z';
    const time = timeOf(at);
    const base: KeptFacts = { reached: 'in the book', at, unsent: 0, held: 0, device: 'phone' };
    expect(keptWords(base)).toBe(`in the book ${time}`);
    expect(keptWords({ ...base, reached: 'on this device', unsent: 1 })).toBe(
      `kept ${time}, to send`,
    );
    expect(keptWords({ ...base, unsent: 3 })).toBe('Kept on this phone. 3 to send.');
    expect(keptWords({ ...base, unsent: 1 })).toBe('Kept on this phone. 1 to send.');
    expect(keptWords({ ...base, reached: 'being kept', unsent: 3 })).toBe('being kept');
    expect(keptWords({ ...base, reached: 'not kept', unsent: 3 })).toBe('Not kept.');
    expect(keptWords({ ...base, held: 1 })).toBe(`1 held, ${time}`);
    expect(keptWords({ ...base, reached: null, at: null })).toBe('');
  });
});

describe('the words of the entry', () => {
  it('say how a short or relative text will be read, and not twice what stands there', () => {
    expect(echoWords('+.016', meaning('+.016'), shown)).toBe('is 18.016 mm, 0.70929 in');
    expect(echoWords('18.016', meaning('18.016'), shown)).toBe('mm, 0.70929 in');
    expect(echoWords('1/2in', meaning('1/2in'), shown)).toBe('is 12.700 mm, 0.5000 in');
  });

  it('say the step to the aim, on the side where metal comes off', () => {
    const step = (sizePm: number, side: 'top' | 'bottom' | null) =>
      stepToTarget(sizePm, 18 * mm, side, um, shown);
    expect(step(18_086 * um, 'top')).toBe('0.086 left');
    expect(step(17_997 * um, 'top')).toBe('0.003 past the aim');
    expect(step(17_990 * um, 'bottom')).toBe('0.010 left');
    expect(step(18_000 * um, 'top')).toBe('at the aim');
    expect(step(18_001 * um, null)).toBe('0.001 over the aim');
    expect(step(17_999 * um, null)).toBe('0.001 under the aim');
  });

  it('ask what an ambiguous text means, one answer for each meaning, in their order', () => {
    const mark = asked('1,250');
    expect(questionWords('1,250', mark.code, mark.meanings, shown)).toEqual({
      title: '1,250: is that mark for decimals or for thousands?',
      answers: ['1.250 mm', '1250 mm'],
    });
    const sign = asked('+17');
    expect(questionWords('+17', sign.code, sign.meanings, shown).answers).toEqual([
      '17 mm',
      'from the nominal: 35 mm',
    ]);
    const fraction = asked('1/2');
    expect(questionWords('1/2', fraction.code, fraction.meanings, shown).answers).toEqual([
      'inches: 12.700 mm',
      'mm: 0.500 mm',
    ]);
    const both = [meaning('4.5'), meaning('4.5in')];
    expect(questionWords('4.5', 'gauge-unit', both, shown)).toEqual({
      title: '4.5: in which unit did the gauge stand?',
      answers: ['mm: 4.5 mm', 'inches: 114 mm'],
    });
  });

  it('name the character that spoils a size, and say that nothing was kept', () => {
    expect(entryErrorWords('18..2', { code: 'two-marks', character: '.' })).toBe(
      '"18..2" is not a size: a second ".". Type it again; nothing was kept.',
    );
    expect(entryErrorWords(' x18', { code: 'not-a-number', character: 'x' })).toContain(
      'does not begin with "x"',
    );
    expect(entryErrorWords('1'.repeat(70), { code: 'text-too-long', character: '' })).toContain(
      '\u2026"',
    );
  });

  it('have words for every fault a text can have', () => {
    const codes: EntryError['code'][] = [
      'empty',
      'alone-sign',
      'no-digits',
      'no-number',
      'not-a-number',
      'two-marks',
      'two-numbers',
      'two-signs',
      'not-a-fraction',
      'zero-below',
      'tolerance',
      'unknown-unit',
      'two-units',
      'not-understood',
      'finer-than-picometre',
      'not-whole-picometres',
      'too-long',
      'text-too-long',
      'no-nominal',
      'not-above-zero',
    ];
    for (const code of codes) {
      const words = entryErrorWords('18', { code, character: '?' });
      expect(words).not.toContain('undefined');
      expect(words).toMatch(/nothing was kept\.$/);
    }
  });
});

describe('slipQuestion', () => {
  const turn: SlipFactsShown = {
    kind: 'thimble turn',
    valuePm: 18_498 * um,
    insteadPm: 17_998 * um,
    stepPm: 500 * um,
    stopsAtPm: null,
    expected: { from: 'readings', lowPm: 17_998 * um, highPm: 17_999 * um },
    others: 4,
    othersMeanPm: 17_998_750_000,
    elsewhere: null,
    gauge: { name: 'Mic 1', kind: 'micrometer', unit: 'mm', resolutionPm: um },
    resolutionPm: um,
  };
  const of = (over: Partial<SlipFactsShown>) => slipQuestion({ ...turn, ...over }, shown);

  it('shows the arithmetic of a missed turn as in the picture', () => {
    expect(of({})).toEqual({
      title: 'One turn of the thimble?',
      rows: [
        { label: 'As typed', figure: '18.498', suspect: true },
        { label: 'One turn less', figure: '17.998', note: '0.500 a turn' },
        { label: 'The other four', figure: '17.999', note: 'within 0.001' },
      ],
      suspect: [0, 4],
    });
  });

  it('says more where a turn is missing', () => {
    expect(of({ valuePm: 17_498 * um }).rows[1]).toMatchObject({ label: 'One turn more' });
  });

  it('asks by the kind of the slip', () => {
    expect(of({ kind: 'sleeve line', stepPm: mm }).title).toBe('One line of the sleeve?');
    expect(of({ kind: 'sleeve line', gauge: { ...turn.gauge, kind: 'caliper' } }).title).toBe(
      'One main division?',
    );
    expect(of({ kind: 'needle turn', stepPm: 200 * um }).title).toBe('One turn of the needle?');
    expect(of({ kind: 'needle turn', stepPm: 200 * um }).rows[1]).toMatchObject({
      label: 'One turn less',
      note: '0.200 a turn',
    });
    const frame = { kind: 'wrong frame', valuePm: 17_998 * um, insteadPm: 42_998 * um } as const;
    expect(of({ ...frame, stepPm: 25 * mm }).title).toBe('A frame of another size?');
    expect(of({ ...frame, stepPm: 25 * mm }).rows[1]).toEqual({
      label: '25 more',
      figure: '42.998',
    });
    expect(of({ ...frame, gauge: { ...turn.gauge, kind: 'depth gauge' } }).title).toBe(
      'Another rod?',
    );
    expect(of({ kind: 'decimal point' }).title).toBe('Is the point in its place?');
    const pointless = { kind: 'decimal point', valuePm: 17_998 * mm, resolutionPm: mm } as const;
    expect(of(pointless).rows.slice(0, 2)).toEqual([
      { label: 'As typed', figure: '17998', suspect: true },
      { label: 'Point moved', figure: '17.998' },
    ]);
    expect(of({ kind: 'one figure' }).title).toBe('One figure wrong?');
    expect(of({ kind: 'other unit', valuePm: 709 * um }).title).toBe(
      'This looks like inches. Is it?',
    );
    expect(of({ kind: 'other unit', valuePm: 457 * mm }).title).toBe(
      'This looks like millimetres. Is it?',
    );
    expect(of({ kind: 'swapped figures' }).title).toBe(
      '18.498 where the others say 17.998. Two figures swapped?',
    );
    expect(of({ kind: 'half or double', valuePm: 9 * mm }).title).toBe('Half the size?');
    expect(of({ kind: 'half or double', valuePm: 36 * mm }).title).toBe('Twice the size?');
    expect(of({ kind: 'wrong feature', elsewhere: 'L5 bore', insteadPm: null }).title).toBe(
      'Is this L5 bore?',
    );
    expect(of({ kind: 'far off', insteadPm: null }).title).toBe(
      'Far from the others. Is it right?',
    );
    const drawn = {
      expected: { from: 'limits', lowPm: 17_996 * um, highPm: 18 * mm },
      others: 0,
    } as const;
    expect(of({ ...drawn, kind: 'far off', insteadPm: null }).title).toBe(
      'Far from what is drawn. Is it right?',
    );
    expect(of({ ...drawn, kind: 'swapped figures' }).title).toBe(
      '18.498, or 17.998? Two figures swapped?',
    );
  });

  it('says how well the gauge repeats where distance is all that is the matter', () => {
    const far = { kind: 'far off', insteadPm: null, repeatPm: 600_000 } as const;
    expect(of(far).rows.at(-1)).toEqual({ label: 'Mic 1 repeats', figure: '\u00b1 0.002' });
    expect(of({ ...far, repeatPm: 0 }).rows.at(-1)).toMatchObject({ figure: '\u00b1 0.001' });
    expect(of({ ...far, repeatPm: null }).rows).toHaveLength(2);
    expect(of({ ...far, kind: 'thimble turn' }).rows).toHaveLength(2);
  });

  it.each([
    ['18.498', 'mm', 'As typed'],
    ['+.5', 'mm', 'Typed +.5 mm'],
    ['98', 'mm', 'Typed 98'],
    ['.7283', 'in', 'Typed .7283 in'],
    ['.7283in', 'mm', 'Typed .7283in'],
  ] as const)(
    'says how it was typed where that is not the size shown: %s %s',
    (text, unit, label) => {
      const row = { label, figure: '18.498', suspect: true };
      expect(of({ typed: { text, unit } }).rows[0]).toEqual(row);
      const hidden = { valuePm: 18_498 * um, resolutionPm: um, typed: { text, unit } };
      expect(blindSlipQuestion(hidden, shown).rows).toEqual([row]);
    },
  );

  it('tells nothing of the others while they are hidden', () => {
    expect(blindSlipQuestion({ valuePm: 18_498 * um, resolutionPm: um }, shown)).toEqual({
      title: 'Is this what the gauge said?',
      rows: [{ label: 'As typed', figure: '18.498', suspect: true }],
      suspect: [0, 6],
    });
  });

  it('says where the gauge stops', () => {
    const beyond = { kind: 'far off', insteadPm: null, expected: null } as const;
    const over = of({
      ...beyond,
      valuePm: 31_400 * um,
      resolutionPm: 100 * um,
      stopsAtPm: 25 * mm,
    });
    expect(over.title).toBe('Mic 1 stops at 25. This says 31.4.');
    expect(over.rows).toHaveLength(1);
    expect(over.suspect).toEqual([0, 4]);
    const under = of({ ...beyond, valuePm: 9 * mm, stopsAtPm: 10 * mm });
    expect(under.title).toBe('Mic 1 begins at 10. This says 9.000.');
  });

  it('holds a first reading against the limits', () => {
    const first = of({
      expected: { from: 'limits', lowPm: 17_996 * um, highPm: 18 * mm },
      others: 0,
    });
    expect(first.rows[2]).toEqual({ label: 'The limits', figure: '17.996', note: 'to 18.000' });
  });
});

it('asks once about a mended reading that looks like a slip itself', () => {
  expect(mendedDoubtWords('17.498 ', '17.998')).toBe(
    'Is it 17.498, or 17.998? It does not lie with the others. Say it once more to keep it.',
  );
  expect(mendedDoubtWords('19.2', null)).toContain('Is it 19.2? It does not lie');
});

describe('targetWords', () => {
  const facts = {
    mark: 'P7',
    partner: 'L7',
    targetPm: 18 * mm,
    noLargerPm: 18_001_400_000,
    noSmallerPm: 17_998_600_000,
    provable: true,
    leftPm: 86 * um,
    kind: 'outside' as const,
    resolutionPm: um,
  };

  it('rounds working limits inward, never outward', () => {
    expect(targetWords(facts, shown)).toEqual({
      title: 'Make P7 to L7',
      size: '18.000',
      between: 'No larger than 18.001, no smaller than 17.999.',
      brief: '17.999 to 18.001',
      left: '0.086 left to turn.',
    });
  });

  it('shows a place more where whole steps leave no room', () => {
    const narrow = { ...facts, noLargerPm: 18_000_930_000, noSmallerPm: 17_999_070_000 };
    expect(targetWords(narrow, shown).brief).toBe('17.9991 to 18.0009');
  });

  it('says what the gauges cannot prove, and when nothing is left', () => {
    expect(targetWords({ ...facts, provable: false }, shown).between).toContain('cannot prove');
    expect(targetWords({ ...facts, leftPm: 0 }, shown).left).toBe('Nothing left to turn.');
    expect(targetWords({ ...facts, leftPm: null }, shown).left).toBe('');
    expect(targetWords({ ...facts, kind: 'bore' }, shown).left).toMatch(/ left to bore\.$/);
    expect(targetWords({ ...facts, kind: 'slot' }, shown).left).toMatch(/ left to take off\.$/);
  });

  it('does not take a cut for noted that was not', () => {
    expect(cutTroubleWords).toContain('was not noted');
  });
});

describe('shapeWords', () => {
  const base = { stations: ['top', 'middle', 'bottom'], directions: ['A', 'B'], resolutionPm: um };

  it('says within what it is round, and which end is larger', () => {
    const findings = [{ kind: 'taper', amountPm: um, wideEnd: 'last' }] as const;
    expect(shapeWords({ ...base, roundWithinPm: um, findings }, shown)).toEqual([
      'Round within 0.001',
      'Bottom 0.001 larger than top',
    ]);
  });

  it('does not call round what is oval, and never shows less than a step', () => {
    const oval = { kind: 'oval', amountPm: 9 * um, station: 1, widestDirection: 1 } as const;
    expect(shapeWords({ ...base, roundWithinPm: 9 * um, findings: [oval] }, shown)).toEqual([
      'Oval by 0.009, wide across B',
    ]);
    expect(shapeWords({ ...base, roundWithinPm: 0, findings: [] }, shown)).toEqual([
      'Round within 0.001',
    ]);
  });

  it('names barrel and waist by the station that stands off', () => {
    const bow = (kind: 'barrel' | 'waist') => [{ kind, amountPm: 4 * um, station: 1 } as const];
    expect(shapeWords({ ...base, roundWithinPm: null, findings: bow('barrel') }, shown)).toEqual([
      'Middle 0.004 larger than the ends',
    ]);
    expect(shapeWords({ ...base, roundWithinPm: null, findings: bow('waist') }, shown)).toEqual([
      'Middle 0.004 smaller than the ends',
    ]);
  });
});

describe('other words of the Bench', () => {
  it('say what a gauge can do, in its own unit', () => {
    const mic = { unit: 'mm', resolutionPm: um, rangeLowPm: 0, rangeHighPm: 25 * mm } as const;
    expect(gaugeFacts(mic, shown)).toBe('0.001 mm, 0 to 25');
    expect(gaugeFacts({ ...mic, rangeLowPm: null, rangeHighPm: null }, shown)).toBe('0.001 mm');
    expect(gaugeFacts({ ...mic, rangeLowPm: 25 * mm, rangeHighPm: null }, shown)).toBe(
      '0.001 mm, from 25',
    );
    const inches = {
      unit: 'in',
      resolutionPm: 2_540_000,
      rangeLowPm: 0,
      rangeHighPm: 25.4 * mm,
    } as const;
    expect(gaugeFacts(inches, shown)).toBe('0.0001 inches, 0 to 1');
  });

  it('say what became of a reading', () => {
    const base = { reason: '', typed: '18.016', firstTyped: null, gauge: 'Mic 2', time: '10:42' };
    expect(standingWords({ ...base, state: 'counted', heldAs: null })).toBe(
      'typed 18.016, Mic 2, 10:42',
    );
    expect(
      standingWords({ ...base, state: 'struck', heldAs: 'thimble turn', reason: 'measured again' }),
    ).toBe('struck out, measured again, typed 18.016, Mic 2, 10:42');
    expect(
      standingWords({ ...base, state: 'held', heldAs: 'thimble turn', firstTyped: '18.106' }),
    ).toBe('held: thimble turn, typed 18.016, first 18.106, Mic 2, 10:42');
  });

  it('say what was not kept and what to do, and nothing of a missing network', () => {
    expect(notKeptWords('outbox/storage-full')).toBe(
      'Not kept. This device has no room left. Make room on it. It stands here until it is; keep it again.',
    );
    expect(notKeptWords('another')).toContain('This device could not keep it.');
    expect(troubleWords('outbox/no-network')).toBe('');
    expect(troubleWords(null)).toBe('');
    expect(troubleWords('outbox/sign-in')).toContain('Sign in again');
  });

  it('list each key once', () => {
    expect(new Set(benchKeys.map(({ keys }) => keys)).size).toBe(benchKeys.length);
  });
});

describe('beforeCutWords', () => {
  it('names what came late, and leaves it to a person', () => {
    expect(beforeCutWords(['18.086'])).toBe(
      '18.086 was read before the last cut, by the clocks of the two devices, and counts for the new size. Strike it out if it tells the old one.',
    );
    expect(beforeCutWords(['18.086', '18.085', '18.084'])).toBe(
      '18.086, 18.085 and 18.084 were read before the last cut, by the clocks of the two devices, and count for the new size. Strike out those that tell the old one.',
    );
  });
});
