import { describe, expect, it } from 'vitest';
import { caughtWords } from '@/lib/text/cut-caught-words';
import { cutHeadWords } from '@/lib/text/cut-head-words';
import { changedOnWords, changedWords, cutCells, nextCells } from '@/lib/text/cut-log-words';
import { fateNote, fateWords, finalFirstWords, pastWords } from '@/lib/text/cut-past-words';
import { afreshWords } from '@/lib/text/cut-screen-words';
import { degreesWords, warmWords } from '@/lib/text/cut-warm-words';
import {
  cutAdviceWords,
  dialFigure,
  dialFigureIn,
  dialWords,
  divisionHint,
  fromToWords,
  learnedWords,
  ratioWords,
  type CutAdviceFacts,
  type CutPiece,
} from '@/lib/text/cut-words';
import { dialRuleWords } from '@/lib/text/dial-rule-words';
import { gaugeEnoughWords } from '@/lib/text/gauge-enough-words';
import { plainText } from '@/lib/text/said';
import type { Shown } from '@/lib/text/shown-size';

const mm = 1_000_000_000;
const um = 1_000_000;
const shown: Shown = { unit: 'mm', decimal: '.' };
const comma: Shown = { unit: 'mm', decimal: ',' };

const piece: CutPiece = {
  mark: 'P7',
  side: 'external',
  gauge: 'Mic 2',
  resolutionPm: um,
  stopPm: 17_998 * um,
  now: { valuePm: 18 * mm, expandedPm: um },
  byPm: 4 * um,
  lapPm: 0,
  leftPm: 62 * um,
  dialUnit: 'mm',
  bitesDialPm: 10 * um,
  springPm: 22 * um,
};
const expected = { valuePm: 18_049 * um, expandedPm: 1.7 * um };
const cut = (how: 'learning' | 'as before' | 'two equal' | 'last' | 'own', more = {}) =>
  ({ kind: 'cut', how, cautious: false, expected, ...more }) as CutAdviceFacts;

describe('cutAdviceWords', () => {
  it.each<[CutAdviceFacts, string]>([
    [{ kind: 'measure' }, 'Measure P7: nothing is known of it since the last cut.'],
    [{ kind: 'held' }, 'A reading is held. Say on the bench whether it counts.'],
    [
      { kind: 'too few' },
      'Nothing says yet how well Mic 2 repeats. Read it three times, or state its uncertainty with the gauges.',
    ],
    [{ kind: 'no slide' }, 'Say which slide it is cut with, and what to put on the dial follows.'],
    [{ kind: 'made', proven: true }, 'P7 is made: 18.000 ± 0.001, inside.'],
    [
      { kind: 'made', proven: false },
      'P7 is at its target, and these gauges cannot prove it. Cut no more.',
    ],
    [{ kind: 'past' }, 'P7 is 0.004 past 17.998. Nothing can be put back: say what becomes of it.'],
    [
      { kind: 'too near' },
      '18.000 is too near 17.998 to say. Measure P7 again, finer, and do not cut.',
    ],
    [{ kind: 'lap', leftPm: 6 * um }, 'Turned. Lap off the last 0.006.'],
    [
      { kind: 'spring', why: 'thin' },
      'Too thin to bite: this tool wants 0.01 or more on the dial. Take a spring pass.',
    ],
    [
      { kind: 'spring', why: 'less than a division' },
      'Less is left than the dial or the tool can take. A spring pass, then lap.',
    ],
    [
      { kind: 'spring', why: 'unsure' },
      'The last cuts took so differently that one division might pass the stop. A spring pass, then lap.',
    ],
    [
      { kind: 'spring', why: 'springs back' },
      'Spring pass first: they took 0.022 by themselves, and 0.062 is left.',
    ],
    [
      cut('learning', { expected: null }),
      'Two cuts alike first; then I can say what the next will take.',
    ],
    [cut('two equal'), 'Take two equal cuts. Expect 18.049 ± 0.002 after this one.'],
    [cut('as before'), 'As deep as the cuts before, and measure. Expect 18.049 ± 0.002 after it.'],
    [cut('last'), 'One cut to the target. Expect 18.049 ± 0.002 after it.'],
    [
      cut('last', { cautious: true }),
      'One cut, short of the target: more might pass the stop. Expect 18.049 ± 0.002 after it.',
    ],
    [cut('own'), 'Your own figure. Expect 18.049 ± 0.002 after it.'],
    [cut('own', { expected: null }), 'Your own figure.'],
  ])('says of %j what is so, then what to do', (advice, says) => {
    expect(plainText(cutAdviceWords(advice, piece, shown))).toBe(says);
  });

  it('says what is left to lap, off a shaft or out of a bore', () => {
    const lapped = { ...piece, lapPm: 6 * um };
    expect(plainText(cutAdviceWords(cut('two equal'), lapped, shown))).toBe(
      'Take two equal cuts. Expect 18.049 ± 0.002 after this one. Lap off the last 0.006.',
    );
    const bore = { ...lapped, side: 'internal' } as const;
    expect(plainText(cutAdviceWords({ kind: 'lap', leftPm: 6 * um }, bore, comma))).toBe(
      'Bored. Lap out the last 0,006.',
    );
  });

  it('says what it can of a piece nobody knows the size of', () => {
    const unknown = { ...piece, now: null, leftPm: null, springPm: null };
    const says = (advice: CutAdviceFacts) => plainText(cutAdviceWords(advice, unknown, shown));
    expect(says({ kind: 'made', proven: true })).toBe('P7 is made.');
    expect(says({ kind: 'too near' })).toBe(
      'P7 is too near 17.998 to say. Measure P7 again, finer, and do not cut.',
    );
  });

  it('sets the figures apart from the words', () => {
    expect(cutAdviceWords(cut('two equal'), piece, shown)).toContainEqual({
      figure: '18.049 ± 0.002',
    });
  });
});

describe('learnedWords', () => {
  const facts = {
    learned: { mean: 0.934, sd: 0.0077, used: 3 },
    elsewhere: [],
    springs: 0,
    springPm: null,
    dialUnit: 'mm' as const,
    bitesDialPm: 10 * um,
    resolutionPm: um,
  };

  it('says what the tool takes, over how many cuts, and how thin it bites', () => {
    expect(plainText(learnedWords(facts, shown))).toBe(
      'It takes 0.93 of what you ask, over three cuts, spread 0.008. This tool bites down to 0.01 on the dial.',
    );
  });

  it.each([
    [['P6'], 2, 'over two cuts, one of them on P6, spread'],
    [['P6', 'P7', 'P7'], 4, 'over four cuts, three of them on P6 and P7, spread'],
    [['P6', 'P6'], 2, 'over two cuts on P6, spread'],
    [['P5', 'P6', 'P7'], 3, 'over three cuts on P5, P6 and P7, spread'],
  ])('says on which other pieces the cuts were made: %s of %d', (elsewhere, used, says) => {
    const learned = { ...facts.learned, used };
    expect(plainText(learnedWords({ ...facts, learned, elsewhere }, shown))).toContain(says);
  });

  it('counts spring passes apart', () => {
    const one = { ...facts, bitesDialPm: 0, springs: 1, springPm: 11 * um };
    expect(plainText(learnedWords(one, comma))).toBe(
      'It takes 0,93 of what you ask, over three cuts, spread 0,008. One spring pass took 0,011. ',
    );
    const two = { ...one, learned: null, springs: 2 };
    expect(plainText(learnedWords(two, shown))).toBe('Two spring passes took 0.011 each. ');
  });

  it('is silent of a ratio nobody can know yet', () => {
    expect(learnedWords({ ...facts, learned: null, bitesDialPm: 0 }, shown)).toEqual([]);
  });
});

describe('the dial', () => {
  it.each([
    [20 * um, shown, '0.02'],
    [5 * um, shown, '0.005'],
    [1_340 * um, shown, '1.34'],
    [500 * um, comma, '0,50'],
    [25_400_000, { unit: 'in', decimal: '.' } as Shown, '0.001'],
    [12_700_000, { unit: 'in', decimal: '.' } as Shown, '0.0005'],
    [25_400_000, shown, '0.0254'],
    [10 * um, { unit: 'in', decimal: '.' } as Shown, '0.0003937'],
    [10_000_001, shown, '0.01'],
  ])('says %d as it stands on it', (pm, own, text) => {
    expect(dialFigure(pm, own)).toBe(text);
  });

  it('says which dial, how many divisions, and how the top slide is set', () => {
    const plain = { dial: 'radius', fineFeed: 1, unit: 'mm' } as const;
    expect(dialWords(plain, 2, shown)).toBe('radius dial, 2 divisions');
    expect(dialWords(plain, 1, shown)).toBe('radius dial, 1 division');
    expect(dialWords({ dial: 'diameter', fineFeed: 10, unit: 'mm' }, null, shown)).toBe(
      'diameter dial, set over 10 to 1',
    );
  });

  it('names its unit where it is not that of the job', () => {
    const inch = { dial: 'radius', fineFeed: 1, unit: 'in' } as const;
    expect(dialWords(inch, 2, shown)).toBe('radius dial in inches, 2 divisions');
    expect(dialFigureIn(25_400_000, 'in', shown)).toBe('0.001 in');
    expect(dialFigureIn(20 * um, 'mm', { unit: 'in', decimal: ',' })).toBe('0,02 mm');
    expect(dialFigureIn(20 * um, 'mm', shown)).toBe('0.02');
    expect(divisionHint('mm', '.')).toBe('mm, or as 0.001 in');
    expect(divisionHint('in', ',')).toBe('inches, or as 0,02 mm');
  });

  it('says where it stands and where it is turned to', () => {
    expect(dialRuleWords({ standsAt: '1.34', turnTo: '1.36' }, true)).toEqual({
      stands: 'stands at 1.34',
      turn: 'turn to 1.36',
      whole: 'The dial stands at 1.34. Turn to 1.36.',
    });
    expect(dialRuleWords({ standsAt: '0.00', turnTo: '0.02' }, false).whole).toBe(
      'Set the dial to 0. Turn to 0.02.',
    );
  });

  it('says from where to where, down for a shaft and up for a bore', () => {
    const facts = { side: 'external', resolutionPm: um } as const;
    expect(fromToWords(18_086 * um, '18.006', facts, shown)).toBe('18.086 down to 18.006');
    expect(fromToWords(17_940 * um, '18.010', { ...facts, side: 'internal' }, shown)).toBe(
      '17.940 up to 18.010',
    );
  });

  it('gives a ratio with its own mark', () => {
    expect(ratioWords(0.9357, 2, comma)).toBe('0,94');
    expect(ratioWords(-0.05, 2, shown)).toBe('\u22120.05');
  });
});

describe('the cut log', () => {
  const line = {
    kind: 'cut',
    askedPm: 200 * um,
    gotPm: 185 * um,
    ratio: 0.925,
    afterPm: 18_405 * um,
    onDial: { dialPm: 100 * um, unit: 'mm' },
  } as const;

  it('gives asked, got, of asked and the size after', () => {
    expect(cutCells(line, um, shown)).toEqual({
      asked: '0.200',
      dial: '',
      got: '0.185',
      ratio: '0.93',
      after: '18.405',
    });
  });

  it.each([
    [{ dialPm: 101.6 * um, unit: 'in' } as const, shown, 'dial 0.004 in'],
    [{ dialPm: 101.6 * um, unit: 'in' } as const, comma, 'dial 0,004 in'],
    [
      { dialPm: 20 * um, unit: 'mm' } as const,
      { unit: 'in', decimal: '.' } as const,
      'dial 0.02 mm',
    ],
    [{ dialPm: 20 * um, unit: 'mm' } as const, shown, ''],
    [null, shown, ''],
  ])('says what stood on a dial of the other unit: %j', (onDial, as, says) => {
    expect(cutCells({ ...line, onDial }, um, as).dial).toBe(says);
    expect(nextCells({ askedPm: 40 * um, onDial, expected: null }, um, as).dial).toBe(says);
  });

  it.each([
    ['spring', 'spring'],
    ['unsaid', 'not said'],
    ['sleeve', 'sleeve'],
  ] as const)('names what asked for nothing: %s', (kind, asked) => {
    const cells = cutCells(
      { kind, askedPm: null, gotPm: null, ratio: null, afterPm: null, onDial: null },
      um,
      shown,
    );
    expect(cells).toEqual({ asked, dial: '', got: '', ratio: '', after: '' });
  });

  it('puts a question mark to what is only expected', () => {
    const next = {
      askedPm: 40 * um,
      onDial: null,
      expected: { takesPm: 37 * um, valuePm: 18_049 * um, ratio: 0.934 },
    };
    expect(nextCells(next, um, shown)).toEqual({
      asked: '0.040',
      dial: '',
      got: '0.037 ?',
      ratio: '0.93 ?',
      after: '18.049 ?',
    });
    expect(nextCells({ ...next, expected: null }, um, shown)).toEqual({
      asked: '0.040',
      dial: '',
      got: '',
      ratio: '',
      after: '',
    });
  });

  it.each([
    ['tool', 'Tool changed'],
    ['insert', 'Insert changed'],
    ['speed', 'Speed changed'],
    ['overhang', 'Overhang changed'],
    ['sleeve', 'Sleeve put in'],
    ['other', 'Something else changed'],
    [null, 'Another machine, slide or tool'],
  ])('says what a new stretch began with: %s', (changed, says) => {
    expect(changedWords(changed)).toBe(says);
  });

  it('says on which other piece a change was noted', () => {
    expect(changedOnWords('insert', 'P8')).toBe('Insert changed, noted on P8');
    expect(afreshWords(changedOnWords('other', 'P8'))).toBe(
      'Something else changed, noted on P8: learned afresh.',
    );
  });

  it('heads the screen with what is cut to what', () => {
    const partner = { mark: 'L7', feature: 'Bore', sizePm: 18_010 * um, resolutionPm: um };
    const facts = { side: 'external', partner, asDrawn: '18', cuts: 3 } as const;
    expect(cutHeadWords(facts, shown)).toEqual({
      line: 'turning, to L7 bore 18.010',
      count: 'cut 4',
    });
    const drawn = { ...facts, side: 'internal', partner: null, asDrawn: '18 H7' } as const;
    expect(cutHeadWords(drawn, shown).line).toBe('boring, to 18 H7');
  });
});

describe('warmWords', () => {
  const facts = { material: 'ebonite', resolutionPm: um };

  it.each([
    [{ kind: 'not said' } as const, ''],
    [
      { kind: 'not known', temperatureMilliC: 41_000 } as const,
      'Piece 41 °C, and ebonite is not in the table: nothing can be said of how large it reads.',
    ],
    [
      { kind: 'go on', temperatureMilliC: 22_000, excessPm: 410_000 } as const,
      'Piece 22 °C: it reads about 0.0004 large, small enough to go on.',
    ],
    [
      { kind: 'go on', temperatureMilliC: 20_000, excessPm: 0 } as const,
      'Piece 20 °C: it reads as at 20 °C.',
    ],
    [
      { kind: 'wait', temperatureMilliC: 48_000, excessPm: 33 * um } as const,
      'The piece is warm: at 48 °C about 0.033 larger than at 20 °C. Wait. An estimate; ten degrees more would be 0.012 more.',
    ],
    [
      { kind: 'wait', temperatureMilliC: -5_000, excessPm: -5 * um } as const,
      'The piece is cold: at \u22125 °C about 0.005 smaller than at 20 °C. Wait. An estimate; ten degrees more would be 0.002 more.',
    ],
  ])('says of %j what heat does', (warm, says) => {
    expect(warmWords(warm, facts, shown)).toBe(says);
  });

  it('says so where nobody said what the piece is of', () => {
    const warm = { kind: 'not known', temperatureMilliC: 41_500 } as const;
    expect(warmWords(warm, { ...facts, material: '' }, comma)).toContain(
      'what it is made of is not said',
    );
    expect(degreesWords(41_500, comma)).toBe('41,5 °C');
  });
});

describe('a piece past its stop', () => {
  const verdict = { state: 'inside', side: null, beyondPm: 0 } as const;
  const l3 = { mark: 'L3', sizePm: 18 * mm, clearancePm: 10 * um, verdict };
  const facts = {
    mark: 'P7',
    partner: 'L7',
    side: 'external',
    resolutionPm: um,
    other: l3,
    nearest: null,
    make: {
      mark: 'L9',
      targetPm: 18_002 * um,
      noLargerPm: 18_003 * um,
      noSmallerPm: 18_001 * um,
      provable: true,
    },
    sleevePm: 10 * um,
  } as const;
  const textOf = (word: { act: string; says: Parameters<typeof plainText>[0] } | null) =>
    word === null ? null : [word.act, plainText(word.says)];

  it('has a final pair undone before the piece gets another partner', () => {
    expect(finalFirstWords('P7', 'L7')).toBe(
      'P7 is final with L7. Undo that pair on the Fits sheet first, then it can have another partner.',
    );
  });

  it('gives each choice with its numbers', () => {
    const words = pastWords(facts, shown);
    expect(textOf(words.other)).toEqual(['Pair P7 with L3', 'L3 is 18.000: 0.010 clear, inside.']);
    expect(textOf(words.make)).toEqual([
      'Make L9 to P7',
      'L9 to 18.002, no larger than 18.003, no smaller than 18.001.',
    ]);
    const narrow = { noLargerPm: 18_002_400_000, noSmallerPm: 18_001_600_000 };
    expect(textOf(pastWords({ ...facts, make: { ...facts.make, ...narrow } }, shown).make)).toEqual(
      ['Make L9 to P7', 'L9 to 18.002, no larger than 18.0024, no smaller than 18.0016.'],
    );
    const crossed = { noLargerPm: 18_001 * um, noSmallerPm: 18_003 * um, provable: false };
    expect(
      textOf(pastWords({ ...facts, make: { ...facts.make, ...crossed } }, shown).make)![1],
    ).toBe('L9 to 18.002; these gauges cannot prove it.');
    expect(textOf(words.sleeve)).toEqual([
      'Sleeve it',
      'A sleeve has to put back 0.010 on diameter and something to cut; until it is in, the piece has no partner.',
    ]);
    expect(textOf(words.scrap)).toEqual([
      'Scrap it',
      'P7 leaves the pairing; L7 waits for another. Its readings stay.',
    ]);
    expect(words.none).toBeNull();
  });

  it.each([
    [20, { state: 'out', side: 'top', beyondPm: 8 * um }, '0.020 clear, 0.008 too slack.'],
    [-3, { state: 'out', side: 'bottom', beyondPm: 11 * um }, '0.003 tight, 0.011 too tight.'],
    [12, { state: 'unsure', side: 'top', beyondPm: 0 }, '0.012 clear, too near a limit to say.'],
    [9, { state: 'near', side: 'bottom', beyondPm: 0 }, '0.009 clear, inside.'],
  ] as const)('names the nearest where none suits: %d', (microns, own, says) => {
    const nearest = { ...l3, clearancePm: microns * um, verdict: own };
    const words = pastWords({ ...facts, other: null, nearest, make: null }, shown);
    expect(plainText(words.none!)).toBe(`No free bore suits it. The nearest is L3: ${says}`);
    expect([words.other, words.make]).toEqual([null, null]);
    const bore = pastWords({ ...facts, other: null, nearest, side: 'internal' }, shown);
    expect(plainText(bore.none!)).toContain('No free shaft suits it.');
  });

  it('leaves nobody waiting where there is no partner', () => {
    expect(textOf(pastWords({ ...facts, partner: null }, shown).scrap)).toEqual([
      'Scrap it',
      'P7 leaves the pairing. Its readings stay.',
    ]);
  });

  it('says what has become of a piece, and writes it beside the piece', () => {
    expect(fateWords('P7', 'scrapped')).toContain('is scrapped');
    expect(fateWords('P7', 'sleeve')).toContain('waits for its sleeve');
    const note = {
      sizePm: 17_994 * um,
      byPm: 4 * um,
      stopPm: 17_998 * um,
      partner: 'L7',
      resolutionPm: um,
    };
    expect(fateNote('scrapped', note, shown)).toBe(
      'Scrapped at 17.994, 0.004 past 17.998, made to L7.',
    );
    expect(fateNote('sleeve', { ...note, partner: null }, shown)).toBe(
      'To be sleeved at 17.994, 0.004 past 17.998.',
    );
  });

  it('is told of at once', () => {
    const caught = {
      mark: 'P7',
      partner: 'L7',
      byPm: 4 * um,
      stopPm: 17_998 * um,
      resolutionPm: um,
    };
    expect(caughtWords(caught, shown)).toBe(
      'P7 is 0.004 past 17.998, the last that suits L7. Cut no more.',
    );
  });
});

describe('gaugeEnoughWords', () => {
  const facts = {
    gauge: 'Mic 1',
    mark: 'P7',
    readings: 2,
    expandedPm: 3 * um,
    bandPm: 4 * um,
    resolutionPm: um,
  };

  it('says that the gauge is too poor for the band, with the number', () => {
    expect(gaugeEnoughWords({ ratio: 1.333, enough: false }, facts, shown)).toBe(
      'Too poor for a band of 0.004: 2 readings with Mic 1 tell P7 to 0.003, 1.3 to 1 where 4 to 1 is wanted. Read it more often, or finer.',
    );
    expect(
      gaugeEnoughWords({ ratio: 3.96, enough: false }, { ...facts, readings: 1 }, shown),
    ).toContain('One reading with Mic 1 tells P7 to 0.003, 3.9 to 1');
    expect(gaugeEnoughWords({ ratio: 3, enough: false }, { ...facts, mark: '' }, shown)).toContain(
      'Mic 1 tells a size to 0.003',
    );
  });

  it('is silent where it is good enough, or nothing is known', () => {
    expect(gaugeEnoughWords({ ratio: 4, enough: true }, facts, shown)).toBe('');
    expect(gaugeEnoughWords(null, facts, shown)).toBe('');
  });
});
