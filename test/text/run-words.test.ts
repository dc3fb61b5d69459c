import { describe, expect, it } from 'vitest';
import { PatternRule } from '@/lib/schema/run';
import { capabilityWords } from '@/lib/text/capability-words';
import {
  controlNames,
  limitsWords,
  noControlWords,
  patternNames,
  shortGroupWords,
  signalWords,
  straddleWords,
  trackNames,
  withinPieceWords,
  type SignalFacts,
  linelessWords,
} from '@/lib/text/control-words';
import { eventToSend, eventTroubleWords, eventWords } from '@/lib/text/event-words';
import {
  asideReason,
  oddAnswers,
  oddFirstWords,
  oddSays,
  oddWords,
  withWithoutWords,
} from '@/lib/text/odd-words';
import {
  lastPieceWords,
  nextMeasureWords,
  offsetEffectWords,
  steadyWords,
  togetherWords,
} from '@/lib/text/run-advice-words';
import { runDoubtWords } from '@/lib/text/run-doubt-words';
import type { Shown } from '@/lib/text/shown-size';

const mm = { unit: 'mm', decimal: '.' } as const;
const comma = { unit: 'mm', decimal: ',' } as const;
const um = 1_000_000;

describe('control charts in words', () => {
  const facts = {
    control: 'single pieces',
    grouped: false,
    follow: 'flat',
    groupOf: 'pieces',
    together: 1,
    base: { count: 11 },
    baseMarks: ['W1', 'W11'],
    trial: true,
  } as const;

  it('say how much settles their limits, and who says so', () => {
    expect(limitsWords({ ...facts, baseMarks: ['W1', 'W11'] }, 'piece')).toBe(
      'Trial limits, from 11 pieces, W1 to W11: nine more settle them (Montgomery, Statistical Quality Control, asks for 20 to 25).',
    );
    expect(
      limitsWords(
        { ...facts, grouped: true, base: { count: 19 }, baseMarks: ['W1', 'W95'] },
        'piece',
      ),
    ).toContain('from 19 groups, W1 to W95: one more settles them');
    expect(
      limitsWords(
        {
          ...facts,
          trial: false,
          follow: 'line',
          base: { count: 24 },
          baseMarks: ['W1', 'W24'],
        },
        'piece',
      ),
    ).toBe('Limits from 24 pieces, W1 to W24. They follow the drift line.');
    expect(
      limitsWords(
        { ...facts, grouped: true, base: { count: 1 }, baseMarks: ['W1', 'W5'] },
        'piece',
      ),
    ).toContain('1 group,');
    expect(limitsWords({ ...facts, baseMarks: ['W1', 'W11'] }, 'turn')).toContain(
      'from 11 turns, W1 to W11',
    );
    expect(withinPieceWords).toContain('limits of the means come out narrow');
  });

  it.each([
    ['few pieces', false, 'Four measured: too few for limits. Five are wanted.'],
    ['no groups', false, 'Means want groups: say how many are taken at a time, two or more.'],
    [
      'short stretch',
      false,
      'Fewer than five pieces in the stretch for the limits: make it longer.',
    ],
    [
      'short stretch',
      true,
      'Fewer than two whole groups in the stretch for the limits: make it longer.',
    ],
    [
      'no line',
      false,
      'Fewer than five pieces since the last event in the stretch for the limits: no line to follow yet.',
    ],
    [
      'no scatter',
      false,
      'Every piece reads the same: the gauge shows no scatter to make limits of.',
    ],
  ] as const)('say why there is none: %s, in groups %s', (reason, grouped, says) => {
    expect(noControlWords({ reason, pieces: 4, grouped })).toBe(says);
  });

  it('have a name for every chart, plot and rule', () => {
    expect(Object.values(controlNames)).toEqual([
      'None',
      'Single pieces',
      'Means and ranges',
      'Means and s',
      'Weighted average (EWMA)',
      'Sums (CUSUM)',
    ]);
    expect(Object.values(patternNames)).toEqual([
      'One beyond three sigma',
      'Nine in a row on one side',
      'Six in a row rising or falling',
      'Fourteen in a row up and down',
      'Two of three beyond two sigma',
      'Four of five beyond one sigma',
      'Fifteen in a row within one sigma',
      'Eight in a row beyond one sigma',
    ]);
    expect(trackNames('single pieces', false)).toEqual({
      main: 'single pieces',
      spread: 'moving ranges',
    });
    expect(trackNames('mean and range', true)).toEqual({ main: 'means', spread: 'ranges' });
    expect(trackNames('mean and s', true)).toEqual({ main: 'means', spread: 's of each group' });
    expect(trackNames('ewma', true).main).toBe('weighted average of means');
    expect(trackNames('ewma', false).main).toBe('weighted average');
    expect(trackNames('cusum', true).main).toBe('sums of means');
    expect(trackNames('cusum', false).main).toBe('sums');
    expect([togetherWords(1, 'pieces'), togetherWords(5, 'pieces')]).toEqual([
      'one at a time',
      'five pieces at a time',
    ]);
    expect(togetherWords(3, 'readings')).toBe('three readings of a piece');
  });
});

describe('signals in words', () => {
  const signal = (
    over: Partial<SignalFacts['first']>,
    control: Parameters<typeof signalWords>[1] = 'single pieces',
    last: Partial<Pick<SignalFacts, 'points'>> & { mark?: string } = {},
  ) =>
    signalWords(
      {
        first: {
          track: 'main',
          mark: 'W12',
          rule: 'beyond three sigma',
          side: 'above',
          change: null,
          ...over,
        },
        last: { mark: last.mark ?? 'W12' },
        points: last.points ?? 1,
      },
      control,
      mm,
    );

  it('name the point, the pattern and what it may mean, for every rule', () => {
    const sided = (rule: PatternRule) => [
      signal({ rule, side: 'above' }),
      signal({ rule, side: 'below' }),
    ];
    expect(sided('beyond three sigma')).toEqual([
      'W12: above three sigma. Something happened there.',
      'W12: below three sigma. Something happened there.',
    ]);
    expect(sided('nine on one side')[1]).toBe(
      'W12: nine in a row below the middle. The middle has moved.',
    );
    expect(sided('six rising or falling')).toEqual([
      'W12: six in a row rising. It drifts.',
      'W12: six in a row falling. It drifts.',
    ]);
    expect(sided('two of three beyond two sigma')[0]).toBe(
      'W12: two of three above two sigma. The middle is moving.',
    );
    expect(sided('four of five beyond one sigma')[1]).toBe(
      'W12: four of five below one sigma. The middle is moving.',
    );
    expect(signal({ rule: 'fourteen alternating', side: null })).toBe(
      'W12: fourteen in a row up and down. Two tools, two chucks or two gauges in turn?',
    );
    expect(signal({ rule: 'fifteen within one sigma', side: null })).toBe(
      'W12: fifteen in a row within one sigma. The limits are too wide for these pieces.',
    );
    expect(signal({ rule: 'eight beyond one sigma', side: null })).toBe(
      'W12: eight in a row beyond one sigma, none near the middle. Two kinds of piece mixed?',
    );
    for (const rule of PatternRule.options) expect(signal({ rule })).toMatch(/^W12: .+[.?]$/);
  });

  it('that go on are said once, with how far', () => {
    expect(signal({ rule: 'nine on one side' }, 'single pieces', { points: 4, mark: 'W15' })).toBe(
      'W12, and on to W15: nine in a row above the middle. The middle has moved.',
    );
  });

  it('tell of averages, sums and ranges by their limit', () => {
    const limit = { rule: 'limit' } as const;
    expect(signal(limit, 'ewma')).toBe(
      'W12: the weighted average is above its limit. The middle has moved.',
    );
    const change = { beganMark: 'W9', meanPm: 11_993.4 * um };
    expect(signal({ ...limit, side: 'below', change }, 'cusum')).toBe(
      'W12: the lower sum is past its limit. It began about W9; the middle since is about 11.993.',
    );
    expect(signal({ ...limit, change }, 'cusum')).toContain('the upper sum');
    const spread = { ...limit, track: 'spread' } as const;
    expect(signal(spread)).toBe('W12: too far from the piece before it.');
    expect(signal(spread, 'mean and range')).toBe(
      'W12: the range is above its limit. Within this group something changed.',
    );
    expect(signal({ ...spread, side: 'below' }, 'mean and s')).toBe(
      'W12: s is below its limit. Pieces too alike: were they all measured?',
    );
  });

  it('tell of groups that are not whole or not of one kind', () => {
    expect(straddleWords({ mark: 'W6 to W10', straddles: ['insert changed'] })).toBe(
      'W6 to W10 mixes two inserts: left out of the limits.',
    );
    expect(
      straddleWords({ mark: 'W6 to W10', straddles: ['offset moved', 're-chucked', 're-chucked'] }),
    ).toBe('W6 to W10 has an offset inside it and mixes two chuckings: left out of the limits.');
    for (const kind of ['coolant', 'warm-up', 'break', 'other'] as const) {
      expect(straddleWords({ mark: 'W1 to W2', straddles: [kind] })).toContain('inside it');
    }
    expect(shortGroupWords({ mark: 'W6 to W10', has: 4, waits: false }, 5)).toBe(
      'W6 to W10 has 4 where 5 are taken: no point for it.',
    );
    expect(shortGroupWords({ mark: 'W16 to W17', has: 2, waits: true }, 5)).toBe(
      'W16 to W17 waits for three more.',
    );
  });
});

describe('doubts in words', () => {
  it('say what the chart cannot be trusted for', () => {
    expect(runDoubtWords({ kind: 'few sizes', sizes: 3, pieces: 11 }, 'piece', mm)).toBe(
      'Only 3 different sizes among 11 pieces: the gauge is too coarse to show their scatter.',
    );
    expect(runDoubtWords({ kind: 'few sizes', sizes: 3, pieces: 11 }, 'turn', mm)).toContain(
      'among 11 turns:',
    );
    expect(runDoubtWords({ kind: 'few sizes', sizes: 1, pieces: 6 }, 'piece', mm)).toBe(
      'All 6 pieces read the same: the gauge is too coarse to show their scatter.',
    );
    expect(
      runDoubtWords(
        { kind: 'coarse gauge', resolutionPm: 5 * um, tolerancePm: 27 * um },
        'piece',
        comma,
      ),
    ).toBe(
      'One division of the gauge, 0,005, is more than a tenth of the 0,027 between the limits: the chart shows the gauge as much as the pieces.',
    );
    expect(runDoubtWords({ kind: 'limits differ' }, 'piece', mm)).toBe(
      'The features have not the same limits about their nominals: none is drawn.',
    );
    const spreads = [
      { name: 'Pin', scatterPm: 3 * um },
      { name: 'Boss', scatterPm: 0.6 * um },
    ];
    expect(runDoubtWords({ kind: 'spreads differ', p: 0.0125, spreads }, 'piece', mm)).toBe(
      "Pin scatters 0.0030, Boss 0.00060: not alike (Bartlett's test, about 1 in 80 by chance). Chart them apart.",
    );
    expect(runDoubtWords({ kind: 'spreads differ', p: 1e-9, spreads }, 'piece', mm)).toContain(
      'less than 1 in 1000 by chance',
    );
  });
});

describe('capability in words', () => {
  const between = {
    between: { lowPm: 11_979_900_000, highPm: 11_992_100_000.4 },
    resolutionPm: um,
    fromNominal: false,
  };

  it('gives each index with its limits, and the share outside as an estimate', () => {
    const words = capabilityWords(
      {
        kind: 'figures',
        pieces: 40,
        cp: { value: 1.416, low: 1.049, high: 1.79 },
        cpk: { value: 1.3, low: 0.98, high: 1.62 },
        outside: 0.000_233,
        ...between,
      },
      'piece',
      mm,
    );
    expect(words).toEqual({
      rows: [
        { label: 'Cp', figure: '1.42', range: '1.05 to 1.79' },
        { label: 'Cpk', figure: '1.30', range: '0.98 to 1.62' },
      ],
      says: [
        'ISO 22514, from 40 steady pieces, limits at 95 %. About 1 piece in 4300 outside: an estimate.',
        'At least 99 % of pieces made like these lie between 11.979 and 11.993, with 95 % confidence (ISO 16269-6), while nothing changes.',
      ],
    });
    const one = (outside: number) =>
      capabilityWords(
        {
          kind: 'figures',
          pieces: 40,
          cp: null,
          cpk: { value: -0.2, low: -0.5, high: 0.1 },
          outside,
          ...between,
        },
        'piece',
        comma,
      );
    expect(one(0.3).rows).toEqual([
      { label: 'Cpk', figure: '\u22120,20', range: '\u22120,50 to 0,10' },
    ]);
    expect(one(0.3).says[0]).toContain('About 30 % of pieces outside: an estimate.');
    expect(one(0).says[0]).toContain('Fewer than 1 piece in a million outside: an estimate.');
  });

  it('says between which sizes nearly all lie, never narrower than they do and to the place of the gauge', () => {
    const says = (more: Partial<typeof between>, shown: Shown = mm) =>
      capabilityWords(
        {
          kind: 'figures',
          pieces: 40,
          cp: null,
          cpk: { value: 1, low: 0.7, high: 1.3 },
          outside: 0.01,
          ...between,
          ...more,
        },
        'piece',
        shown,
      ).says[1]!;
    const exact = { lowPm: 11_980 * um, highPm: 11_992 * um };
    expect(says({ between: exact })).toContain('between 11.980 and 11.992, with');
    expect(says({ resolutionPm: um / 10 })).toContain('between 11.9799 and 11.9922, with');
    // By hand: 11.9799 / 25.4 = 0.4716496 and 11.9921 / 25.4 = 0.4721299, hundred-thousandths outward.
    expect(says({}, { unit: 'in', decimal: ',' })).toContain('between 0,47164 and 0,47213, with');
    const apart = { lowPm: -4_200_000, highPm: 3_100_000 };
    expect(says({ between: apart, fromNominal: true })).toBe(
      'At least 99 % of pieces made like these lie between \u22120.005 and +0.004 from the nominal, with 95 % confidence (ISO 16269-6), while nothing changes.',
    );
  });

  it('says each reason why there is none, and what would make it possible', () => {
    const says = (
      reason: Parameters<typeof capabilityWords>[0] extends infer F
        ? F extends { reasons: readonly (infer R)[] }
          ? R
          : never
        : never,
      pieces = 12,
    ) =>
      capabilityWords(
        { kind: 'none', reasons: [reason], pieces, tolerancePm: 27 * um },
        'piece',
        mm,
      ).says[0];
    expect(says('no limits')).toBe(
      'The drawing gives no limits, so there is nothing to be capable of. With one it can be told.',
    );
    expect(says('limits differ')).toBe(
      'These features have not the same limits about their nominals. A run of one of them alone has a capability.',
    );
    expect(says('no spread')).toBe(
      'Every piece reads the same: the gauge shows no spread to go by. Measure with a finer one.',
    );
    expect(says('too few')).toBe(
      '12 pieces are too few to say: thirty steady ones are wanted, 18 more.',
    );
    expect(says('too few', 0)).toBe('Nothing is measured yet. Thirty steady pieces are wanted.');
    expect(says('drifting')).toContain('Hold it still by smaller offsets oftener, then thirty');
    expect(says('not steady')).toContain(
      'farther out than chance puts one of so many. Find what happened there, then thirty steady ones.',
    );
    expect(says('gauge too coarse')).toBe(
      'The gauge is too coarse for these limits: measure with one that shows 0.0027 or finer.',
    );
    expect(says('not normal')).toContain('Anderson and Darling');
    expect(
      capabilityWords(
        { kind: 'none', reasons: ['gauge too coarse'], pieces: 40, tolerancePm: null },
        'piece',
        mm,
      ).says[0],
    ).toBe('The gauge is too coarse for these limits: measure with a finer gauge.');
  });

  it('count turns where a piece has several', () => {
    const says = (reason: 'too few' | 'drifting', pieces: number) =>
      capabilityWords({ kind: 'none', reasons: [reason], pieces, tolerancePm: 27 * um }, 'turn', mm)
        .says[0];
    expect(says('too few', 0)).toBe('Nothing is measured yet. Thirty steady turns are wanted.');
    expect(says('too few', 1)).toContain('One turn is too few to say');
    expect(says('too few', 28)).toContain('28 turns are too few to say: thirty steady ones');
    expect(says('drifting', 40)).toContain('then thirty turns.');
    const figures = {
      kind: 'figures',
      pieces: 40,
      cp: null,
      cpk: { value: 1, low: 0.7, high: 1.3 },
      outside: 0.01,
      between: { lowPm: 0, highPm: um },
      resolutionPm: um,
      fromNominal: true,
    } as const;
    expect(capabilityWords(figures, 'turn', mm).says[0]).toContain('from 40 steady turns,');
  });
});

describe('odd pieces in words', () => {
  const odd = { mark: 'W12', offPm: -8_200_000, saidRight: false, slip: null };

  it('say how far off, and the likely slip', () => {
    expect(oddWords(odd, mm)).toEqual({
      title: 'W12 stands off the line',
      says: '0.008 below where the others put it. No usual slip explains it: swarf, a burr, a warm piece, or it is so.',
    });
    const slip = { kind: 'thimble turn', text: '12.490', insteadPm: 11_990 * um } as const;
    expect(oddWords({ ...odd, offPm: 500 * um, slip }, mm).says).toBe(
      '0.500 above where the others put it. 12.490 looks like one turn of the thimble, 11.990 without it.',
    );
    expect(oddWords({ ...odd, slip: { ...slip, insteadPm: null } }, mm).says).toContain(
      'looks like one turn of the thimble.',
    );
    expect(oddWords({ ...odd, saidRight: true }, mm).says).toBe(
      '0.008 below where the others put it. Said to be right; it counts.',
    );
    expect(oddSays).toContain('outlier test about a line');
    expect(Object.values(oddAnswers)).toEqual(['Measure it again', 'It is right', 'Set it aside']);
  });

  it('are to be settled before what they count in is acted on', () => {
    expect(oddFirstWords(['W7'])).toBe(
      'W7 stands off the line and counts in this: settle it first.',
    );
    expect(oddFirstWords(['W7', 'W9', 'W12'])).toBe(
      'W7, W9 and W12 stand off the line and count in this: settle them first.',
    );
  });

  it('offer the slip as the reason', () => {
    expect(asideReason(null)).toBe('off the line');
    expect(asideReason({ kind: 'swapped figures', text: '11.909', insteadPm: null })).toBe(
      'off the line: two figures swapped',
    );
  });

  it('show the drift with them and without', () => {
    const line = (slopeMmPerPiece: number) =>
      ({ kind: 'line', slopeMmPerPiece, scatterMm: 0.0006, pieces: 9 }) as const;
    expect(
      withWithoutWords(
        { withAll: line(-0.0004), without: { kind: 'too-little', pieces: 4 } },
        'piece',
        mm,
      ),
    ).toEqual([
      { label: 'With it', figure: '\u22120.00040 a piece, scatter 0.00060' },
      { label: 'Without it', figure: 'too few for a line' },
    ]);
    const both = { withAll: line(0.0019), without: line(0.0021) };
    expect(withWithoutWords(both, 'turn', mm).map(({ figure }) => figure)).toEqual([
      '+0.0019 a turn, scatter 0.00060',
      '+0.0021 a turn, scatter 0.00060',
    ]);
  });
});

describe('what to do next in words', () => {
  it('moves a steady run once, to the middle', () => {
    expect(steadyWords('top')).toEqual({
      summary: 'steady, but too near the top',
      title: 'Steady, but too near the top',
      says: 'It does not drift, and its scatter reaches over the upper limit. Move it to the middle, once:',
    });
    expect(steadyWords('bottom').says).toContain('the lower limit');
  });

  it('leaves noise alone', () => {
    expect(lastPieceWords({ mark: 'W11', offPm: 1.2 * um, within: true }, mm)).toBe(
      'W11 is 0.001 above the line of the others: within the noise. Leave the machine alone for it.',
    );
    expect(lastPieceWords({ mark: 'W11', offPm: 0.2 * um, within: true }, comma)).toContain(
      'W11 is on the line of the others',
    );
    expect(lastPieceWords({ mark: 'W11', offPm: -9 * um, within: false }, mm)).toBe(
      'W11 is 0.009 below the line of the others: more than the noise. Measure it again before anything is moved.',
    );
  });

  it.each([
    ['few', 1, 'Measure W12 next, and each piece until there is a line.'],
    ['drift', 1, 'Measure W12 next, and each piece up to there.'],
    ['drift', 3, 'Measure W12 next: every third piece, six times before it meets the limit.'],
    ['drift', 12, 'Measure W12 next: every 12th piece, six times before it meets the limit.'],
    ['drift', 22, 'Measure W12 next: every 22nd piece, six times before it meets the limit.'],
    [
      'steady',
      5,
      'Measure W12 next: every fifth piece, a sixth of what has kept by itself so far.',
    ],
    [
      'steady',
      21,
      'Measure W12 next: every 21st piece, a sixth of what has kept by itself so far.',
    ],
    ['events', 1, 'Measure W12 next: each piece, six times between one adjustment and the next.'],
    ['unknown', 1, 'Measure W12 next, and each piece until it has kept for twelve by itself.'],
  ] as const)('says when to measure next: %s, one in %i', (because, every, says) => {
    const place = { mark: 'W12' };
    expect(nextMeasureWords({ place, every, because, each: 'piece' })).toBe(says);
    // With several features of a piece the gap is counted in turns.
    expect(nextMeasureWords({ place, every, because, each: 'turn' })).toBe(
      says.replace('piece', 'turn'),
    );
  });

  it('names the pieces of a stretch that is too short for a line', () => {
    expect(linelessWords({ first: 'W21', last: 'W23', count: 3 })).toBe(
      'W21 to W23: three in a stretch are too few for a line of its own, so no point is drawn yet.',
    );
    expect(linelessWords({ first: 'W21', last: 'W21', count: 1 })).toContain(
      'W21: one in a stretch is',
    );
  });

  it('follows an offset to its effect', () => {
    const facts = {
      askedPm: -20 * um,
      mark: 'W15',
      expectedPm: 11_978 * um,
      halfPm: 1.4 * um,
      got: null,
    };
    expect(offsetEffectWords(facts, mm)).toEqual({
      title: 'Offset \u22120.020',
      says: 'W15 should come out near 11.978 (11.976 to 11.980): an estimate by the line before.',
      decide: false,
    });
    const got = (valuePm: number, movedPm: number, asExpected = false) =>
      offsetEffectWords({ ...facts, got: { valuePm, movedPm, asExpected } }, mm);
    expect(got(11_979 * um, -19 * um, true)).toMatchObject({
      title: 'The offset took',
      says: '\u22120.020 was put in, and W15 came out at 11.979, where 11.978 was expected.',
    });
    const half = got(11_988 * um, -10 * um);
    expect(half.decide).toBe(true);
    expect(half.says).toBe(
      '\u22120.020 was put in and it moved \u22120.010: W15 is 11.988, where 11.976 to 11.980 was expected. It is half: was it put in on the diameter where the dial counts the radius?',
    );
    expect(got(12_018 * um, 20 * um).says).toContain('was the sign turned round?');
    expect(got(11_958 * um, -40 * um).says).toContain('It is double');
    expect(got(11_998 * um, 0).says).toContain('was it put in at all?');
    expect(got(11_990 * um, -5 * um).says).toContain('play in the slide');
  });

  it('names an offset with its amount and its dial', () => {
    const event = { kind: 'offset moved', note: 'by hand', at: '', offsetPm: -20 * um } as const;
    expect(eventWords({ ...event, offsetDial: 'radius' }, mm)).toEqual({
      title: 'Offset moved \u22120.020',
      note: '\u22120.010 on the radius dial, by hand',
    });
    expect(
      eventWords({ ...event, offsetPm: -5 * um, offsetDial: 'radius', note: '' }, mm).note,
    ).toBe('\u22120.0025 on the radius dial');
    expect(eventWords({ ...event, offsetDial: 'diameter' }, mm).note).toBe('by hand');
    expect(eventWords({ ...event, offsetPm: null, offsetDial: null }, mm).title).toBe(
      'Offset moved',
    );
    expect(eventWords(event).title).toBe('Offset moved');
    expect([eventToSend, eventTroubleWords]).toEqual([
      'to send',
      'The event could not be kept on this device. Make room, then note it again.',
    ]);
  });
});
