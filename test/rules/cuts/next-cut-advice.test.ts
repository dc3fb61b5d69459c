import { describe, expect, it } from 'vitest';
import type { CutAim } from '@/lib/rules/cuts/cut-aim';
import type { CutStep } from '@/lib/rules/cuts/cut-steps';
import { expectedSize } from '@/lib/rules/cuts/expected-size';
import { learnedCuts } from '@/lib/rules/cuts/learned-cuts';
import { nextCutAdvice, type CutAdvice } from '@/lib/rules/cuts/next-cut-advice';
import type { Slide } from '@/lib/rules/cuts/slide';
import { mm, um } from '../make';
import { aCut } from './a-cut';

// The piece of look.md's picture: to 18.000, between 17.998 and 18.002, known to 0.0005 (standard).
const slide: Slide = { dial: 'radius', divisionPm: 10 * um, fineFeed: 1, bitesPm: 20 * um };

type Move = [asked: number | 'spring', got: number];

function facts(
  nowMicrons: number,
  moves: readonly Move[] = [],
  more: {
    lap?: number;
    slide?: Slide | null;
    uMicrons?: number;
    half?: number;
    bore?: boolean;
  } = {},
) {
  const { lap = 0, uMicrons = 0.5, half = 2, bore = false } = more;
  const own = more.slide === undefined ? slide : more.slide;
  const sign = bore ? -1 : 1;
  const guardPm = Math.ceil(1.65 * uMicrons * um);
  const nowPm = 18 * mm + sign * nowMicrons * um;
  let beforePm = nowPm + sign * moves.reduce((sum, [, got]) => sum + got * um, 0);
  const steps = moves.map(([asked, got], i): CutStep => {
    const afterPm = beforePm - sign * got * um;
    const askedPm = asked === 'spring' ? null : asked * um;
    const step: CutStep = {
      cut: aCut(i + 1, { spring: askedPm === null, askedPm: askedPm ?? 0 }),
      number: i + 1,
      kind: askedPm === null ? 'spring' : 'cut',
      askedPm,
      beforePm,
      afterPm,
      gotPm: got * um,
      ratio: askedPm === null ? null : (got * um) / askedPm,
      afresh: false,
    };
    beforePm = afterPm;
    return step;
  });
  const limits = { lowerPm: 18 * mm - half * um, upperPm: 18 * mm + half * um };
  const aim: CutAim = {
    side: bore ? 'internal' : 'external',
    aimPm: 18 * mm,
    limits,
    noLargerPm: limits.upperPm - guardPm,
    noSmallerPm: limits.lowerPm + guardPm,
    provable: limits.lowerPm + guardPm <= limits.upperPm - guardPm,
    now: {
      valuePm: nowPm,
      standardPm: uMicrons * um,
      expandedPm: 2 * uMicrons * um,
      degrees: Infinity,
      count: 3,
      gaugeId: 'mic',
      repeatability: 'stated',
      place: null,
    },
    limitStandardPm: 0,
    partner: null,
  };
  const learnt = learnedCuts(steps, aim.side, own ?? slide, false);
  return { aim, lapPm: lap * um, steps, learnt, slide: own };
}

/** "two equal 2" for two divisions, or the kind and why. */
function brief(advice: CutAdvice): string {
  if (advice.kind === 'cut') {
    return `${advice.how} ${advice.divisions}${advice.cautious ? ' cautious' : ''}`;
  }
  return advice.kind === 'spring' ? `spring: ${advice.why}` : advice.kind;
}
const adviceOf = (...given: Parameters<typeof facts>) => brief(nextCutAdvice(facts(...given)));

/** look.md's picture: 0.200 took 0.185, 0.200 took 0.188, 0.140 took 0.131; 0.080 left to turn, then 0.006 to lap. */
const pictured: Move[] = [
  [200, 185],
  [200, 188],
  [140, 131],
];

describe('nextCutAdvice', () => {
  it('takes two equal cuts of what is left, as the picture has it: two divisions, 0.040 on diameter', () => {
    const said = nextCutAdvice(facts(86, pictured, { lap: 6 }));
    expect(said).toEqual({
      kind: 'cut',
      how: 'two equal',
      cautious: false,
      divisions: 2,
      dialPm: 20 * um,
      askedPm: 40 * um,
    });
  });

  it('then takes the second of the two, to the target', () => {
    // 0.043 left; 0.043 / 0.9326 = 0.0461, two divisions of 0.02 on diameter.
    expect(adviceOf(49, [...pictured, [40, 37]], { lap: 6 })).toBe('last 2');
  });

  it.each([
    [
      'no deeper than the cuts it was learned from',
      [
        900,
        [
          [200, 184],
          [200, 186],
        ],
      ],
      'as before 10',
    ],
    [
      'a last cut alike those before it',
      [
        60,
        [
          [60, 55],
          [60, 56],
        ],
      ],
      'last 3',
    ],
    [
      'half of a last cut much thinner than those',
      [
        56,
        [
          [200, 185],
          [200, 185],
        ],
      ],
      'two equal 1',
    ],
  ] as [string, [number, Move[]], string][])('proposes %s', (_, [now, moves], wanted) => {
    expect(adviceOf(now, moves)).toBe(wanted);
  });

  it('goes no deeper than has one chance in twenty to pass the stop', () => {
    // Ratios 0.80 and 1.10: mean 0.95, sd 0.212, t(0.95, 1) = 6.314, upper 2.59. Left 0.060 to the target:
    // 0.0632 asked, three divisions; to the stop 0.0612: 0.0612 / 2.59 = 0.0236, one division.
    expect(
      adviceOf(60, [
        [60, 48],
        [60, 66],
      ]),
    ).toBe('last 1 cautious');
  });

  it('foretells nothing with fewer than two comparable cuts: two alike, a third of what is left each', () => {
    expect(adviceOf(300)).toBe('learning 5'); // 0.100 on diameter: five divisions of 0.020
    expect(adviceOf(205, [[100, 95]])).toBe('learning 5'); // the second alike
    const first = facts(205, [[100, 95]]);
    const { aim, learnt } = first;
    expect(
      expectedSize({
        now: aim.now!,
        side: 'external',
        askedPm: 100 * um,
        learned: learnt.learned,
        askedBeforePm: [100 * um],
      }),
    ).toBeNull();
  });

  it('does not take the second alike where the first took as much as is left', () => {
    expect(adviceOf(90, [[100, 95]])).toBe('learning 1'); // a third of 0.090
  });

  it('takes half, or all, where a third is less than the dial has', () => {
    expect(adviceOf(45)).toBe('learning 1');
    expect(adviceOf(25)).toBe('learning 1');
  });

  it.each([
    [
      'less than a division is left',
      [
        15,
        [
          [60, 55],
          [60, 56],
        ],
      ],
      'spring: less than a division',
    ],
    [
      'the last cuts took so differently that one division might be too much',
      [
        30,
        [
          [100, 95],
          [100, 65],
        ],
      ],
      'spring: unsure',
    ],
    [
      'they did, and the spring pass is taken',
      [
        30,
        [
          [100, 95],
          [100, 65],
          ['spring', 2],
        ],
      ],
      'lap',
    ],
    [
      'a spring pass after that took nothing more',
      [
        15,
        [
          [60, 55],
          [60, 56],
          ['spring', 0],
        ],
      ],
      'lap',
    ],
    [
      'what is left is too thin to bite',
      [
        30,
        [
          [60, 55],
          [60, 56],
        ],
        40,
      ],
      'spring: thin',
    ],
    [
      'spring passes take a division and a good part of it',
      [
        62,
        [
          [60, 55],
          ['spring', 22],
          [60, 56],
        ],
      ],
      'spring: springs back',
    ],
    [
      'they did, but one was just taken',
      [
        60,
        [
          [60, 55],
          [60, 56],
          ['spring', 22],
        ],
      ],
      'last 3',
    ],
    [
      'they take little of what is left',
      [
        200,
        [
          [200, 185],
          ['spring', 22],
          [200, 185],
        ],
      ],
      'last 10',
    ],
  ] as [string, [number, Move[], number?], string][])(
    'knows when a spring pass is better: %s',
    (_, [now, moves, bites], wanted) => {
      const own = { ...slide, bitesPm: (bites ?? 20) * um };
      expect(adviceOf(now, moves, { slide: own })).toBe(wanted);
    },
  );

  it.each([
    [86, 0, 'learning 1'],
    [86, 80, 'spring: less than a division'], // 0.006 above what is left for lapping
    [6, 6, 'lap'],
    [4, 0, 'spring: less than a division'],
    [1.1, 0, 'made'],
    [0, 0, 'made'],
    [-1.1, 0, 'made'],
    [-1.5, 0, 'too near'],
    [-2.5, 0, 'too near'],
    [-4, 0, 'past'],
  ])('at %d above the target with %d left to lap says %s', (now, lap, wanted) => {
    expect(adviceOf(now, [], { lap })).toBe(wanted);
  });

  it('says by how much a piece is past its limit', () => {
    expect(nextCutAdvice(facts(-6))).toEqual({ kind: 'past', byPm: 4 * um });
  });

  it('says of a bore what it says of a shaft, the other way about', () => {
    expect(adviceOf(86, pictured, { lap: 6, bore: true })).toBe('two equal 2');
    expect(nextCutAdvice(facts(-6, [], { bore: true }))).toEqual({ kind: 'past', byPm: 4 * um });
    expect(adviceOf(0, [], { bore: true })).toBe('made');
  });

  it('calls a piece at its target made where no gauge could prove it, and says so', () => {
    expect(nextCutAdvice(facts(-0.5, [], { half: 1, uMicrons: 1 }))).toEqual({
      kind: 'made',
      proven: false,
    });
  });

  it('says nothing of a dial nobody has told it of', () => {
    expect(adviceOf(86, [], { slide: null })).toBe('no slide');
    expect(adviceOf(0, [], { slide: null })).toBe('made');
  });

  it('asks to measure where nothing is known since the last cut', () => {
    const all = facts(86);
    expect(nextCutAdvice({ ...all, aim: { ...all.aim, now: null } })).toEqual({ kind: 'measure' });
  });

  it('never proposes more than is left, whatever was learned of the tool', () => {
    for (const left of [20, 35, 60, 140, 400]) {
      for (const got of [30, 55, 60, 75]) {
        const said = nextCutAdvice(
          facts(left, [
            [60, got],
            [60, got + 1],
          ]),
        );
        if (said.kind !== 'cut') continue;
        const mostPm = said.askedPm * ((got + 1) / 60);
        expect(mostPm).toBeLessThanOrEqual((left + 2) * um);
      }
    }
  });
});

describe('expectedSize', () => {
  it('foretells the size after the cut of the picture, 18.049, to 0.002', () => {
    const { aim, learnt } = facts(86, pictured, { lap: 6 });
    const expected = expectedSize({
      now: aim.now!,
      side: 'external',
      askedPm: 40 * um,
      learned: learnt.learned,
      askedBeforePm: learnt.steps.map(({ askedPm }) => askedPm!),
    })!;
    // 18.086 - 0.040 x (0.925 + 0.940 + 0.93571)/3 = 18.04866
    expect(expected.valuePm / mm).toBeCloseTo(18.04866, 5);
    expect(expected.expandedPm / um).toBeGreaterThan(1);
    expect(expected.expandedPm / um).toBeLessThan(2);
  });

  it.each([
    // t for 95.45 % (JCGM 100, table G.2): 13.97 of one degree of freedom, 4.53 of two, 3.31 of three.
    [2, 13.97],
    [3, 4.53],
    [4, 3.31],
  ])('doubts one more ratio than %i by their spread and that of their mean', (used, t) => {
    const { expandedPm } = expectedSize({
      now: { valuePm: 18 * mm, standardPm: 1, degrees: 50 },
      side: 'external',
      askedPm: 40 * um,
      learned: { kind: 'spread', mean: 0.9, sd: 0.01, used, upper: 1 },
      askedBeforePm: Array.from({ length: used }, () => 40 * um),
    })!;
    expect(expandedPm / um / (t * 40 * 0.01 * Math.sqrt(1 + 1 / used))).toBeCloseTo(1, 2);
  });

  it('is not certain of two cuts that happen to agree', () => {
    const { aim, learnt } = facts(60, [
      [60, 55],
      [60, 55],
    ]);
    const ask = (askedPm: number) =>
      expectedSize({
        now: aim.now!,
        side: 'external',
        askedPm,
        learned: learnt.learned,
        askedBeforePm: [60 * um, 60 * um],
      })!;
    // sqrt 2 x 0.5 / 60 = 0.01179 a ratio, x sqrt 1.5 x 60 = 0.866; with 0.5 combined 1.0 um.
    expect(ask(60 * um).expandedPm / um).toBeGreaterThan(2);
    expect(ask(20 * um).expandedPm).toBeLessThan(ask(60 * um).expandedPm);
  });

  it('grows a bore', () => {
    const { aim, learnt } = facts(
      60,
      [
        [60, 55],
        [60, 56],
      ],
      { bore: true },
    );
    const { valuePm } = expectedSize({
      now: aim.now!,
      side: 'internal',
      askedPm: 40 * um,
      learned: learnt.learned,
      askedBeforePm: [60 * um, 60 * um],
    })!;
    expect(valuePm).toBe(18 * mm - 60 * um + 37 * um);
  });
});
