import { describe, expect, it } from 'vitest';
import { strikeTroubleWords } from '@/lib/text/bench-where';
import { capabilityWords, type NoCapabilityReason } from '@/lib/text/capability-words';
import { closerWords } from '@/lib/text/closer-words';
import { straddleWords, withinPieceWords } from '@/lib/text/control-words';
import { driftWords, type DriftFacts } from '@/lib/text/drift-words';
import { eventWords } from '@/lib/text/event-words';
import { denseWords, fitRulesSentence, fitRulesTitles } from '@/lib/text/fit-rules-words';
import { farWords, hotCareWords } from '@/lib/text/heat-words';
import { materialFaultWords } from '@/lib/text/material-fault-words';
import { leftOutWords } from '@/lib/text/matrix-words';
import { oddSays, oddWords } from '@/lib/text/odd-words';
import { ordinalWord } from '@/lib/text/ordinal-word';
import { asMadeWords, lookWords, markTakenWords, undoneWords } from '@/lib/text/pair-record-words';
import {
  keptApartWords,
  moreMovesWords,
  purposeOptions,
  purposeWords,
} from '@/lib/text/pairing-words';
import { offsetEffectWords } from '@/lib/text/run-advice-words';
import { runHeadWords, runSentence } from '@/lib/text/run-words';
import { governsChoiceWords, shapeEffectWords } from '@/lib/text/shape-effect-words';
import { tightCareWords } from '@/lib/text/ways-words';

const um = 1_000_000;
const mm = 1_000_000_000;
const shown = { unit: 'mm', decimal: '.' } as const;
const inch = { unit: 'in', decimal: '.' } as const;

it('says that a cut or an event could not be struck out on this device', () => {
  expect(strikeTroubleWords).toBe(
    'That could not be kept on this device, and nothing was changed. Make room, then try it again.',
  );
});

describe('the Fits sheet', () => {
  it.each([
    [
      { act: 'made final', by: 'M. Hale', clearancePm: 11 * um, uncertaintyPm: um },
      'made final by M. Hale, 0.011 ± 0.001 clear',
    ],
    [
      { act: 'made final', by: null, clearancePm: -3 * um, uncertaintyPm: um },
      'made final, 0.003 ± 0.001 tight',
    ],
    [
      { act: 'let stand', by: null, clearancePm: 11 * um, uncertaintyPm: null },
      'let stand, 0.011 clear',
    ],
    [
      { act: 'let stand', by: 'M. Hale', clearancePm: null, uncertaintyPm: null },
      'let stand by M. Hale, without a size',
    ],
  ] as const)('keeps the record of a pair: %j', (look, says) => {
    expect(lookWords(look, um, shown)).toBe(says);
  });

  it('keeps why a pair was undone, and says which pair has a mark', () => {
    const facts = { by: 'M. Hale', reason: 'scored.', clearancePm: 11 * um, mark: 'A1' };
    expect(undoneWords(facts, um, shown)).toBe(
      'undone by M. Hale: scored. It was pair A1, 0.011 clear.',
    );
    const bare = { by: null, reason: '', clearancePm: null, mark: '' };
    expect(undoneWords(bare, um, shown)).toBe('undone. It was final.');
    expect(asMadeWords(11 * um, 0, um, shown)).toBe('0.011 clear');
    expect(markTakenWords('A1', 'P3', 'L3')).toBe(
      'P3 in L3 carries the mark A1 already. Two sets must not look alike.',
    );
  });

  it('says what takes part, what the pairs were chosen for, and what moved', () => {
    expect(leftOutWords('P3', true)).toBe('P3 is left out: nothing is paired with it.');
    expect(leftOutWords('P3', false)).toBe('P3 takes part in the pairing.');
    expect(moreMovesWords(1)).toBe('One more piece changed partners.');
    expect(moreMovesWords(4)).toBe('4 more pieces changed partners.');
    expect(keptApartWords).toBe('The pairs kept apart leave no complete set, whatever the sizes.');
    expect(purposeOptions.map(({ label, hint }) => `${label}: ${hint}`)).toEqual([
      'Worst pair best: the furthest from the aim as near as can be',
      'Closest to the aim: least distance of all pairs together',
      'Most likely all inside: counts how well each size is known',
    ]);
    const none = { pairs: 2, allInside: null };
    expect(purposeWords('most likely', none, shown)).toBe(
      'Chosen so that all are most likely inside.',
    );
    expect(purposeWords('closest', { pairs: 0, allInside: null }, shown)).toBe(
      'No pair lies inside the fit yet.',
    );
  });

  it('reads its two rules aloud', () => {
    const facts = {
      ...shown,
      aimPm: 10 * um,
      stepPm: um,
      internal: { title: 'Liners', feature: 'bore' },
      external: { title: 'Pistons', feature: 'outside' },
      ties: [1],
      toMake: [],
    };
    expect(fitRulesTitles(facts)).toEqual({
      internal: { title: 'Liners', subtitle: 'bore, mm' },
      external: { title: 'Pistons', subtitle: 'slid 0.010' },
      between: 'in 0.001 mm',
    });
    const half = { ...facts, aimPm: 20_500_000 };
    expect(fitRulesTitles(half).external.subtitle).toBe('slid 0.0205');
    expect(fitRulesSentence(half, 500)).toContain('slid 0.0205 so that');
    expect(fitRulesSentence(facts, 500)).toMatch(
      /^Liners above, pistons below, .*, the lower rule slid 0\.010 so that a pair at the aim stands plumb\. 1 pair, 0 to make\.$/,
    );
    expect(fitRulesSentence({ ...facts, ties: [1, 2], toMake: [1] }, 500)).toMatch(
      / 2 pairs, 1 to make\.$/,
    );
    const dense = {
      pieces: 80,
      toMake: 2,
      marked: 9,
      leastPm: um,
      mostPm: 2 * um,
      resolutionPm: um,
    };
    const rest =
      '9 of 82 carry their mark: without a partner, outside or unsure, smallest and largest. The table names all.';
    expect(denseWords(dense, shown)).toBe(
      `Each block is a piece at its own size, known to ± 0.001 to 0.002. A hollow one is to make. ${rest}`,
    );
    const alike = { ...dense, toMake: 0, mostPm: um };
    expect(denseWords(alike, shown)).toContain('at its own size, known to ± 0.001. 9 of 80');
    expect(denseWords({ ...dense, pieces: 0, toMake: 2, marked: 0 }, shown)).toContain(
      'at its own size. A hollow one is to make. 0 of 2',
    );
  });

  it('defers to others where a fit is tight or hot', () => {
    const tight =
      "Tight fits store force: a hub can burst, and heated or chilled parts burn; the maker's data, local codes and licensed practice decide, this figure gives no leave.";
    expect([tightCareWords(-1), tightCareWords(0)]).toEqual([tight, null]);
    expect(hotCareWords).toBe(
      "Hot figures are estimates; they give no leave to run hot or under pressure. Local codes, the maker's data sheet and licensed practice decide.",
    );
    const far =
      'The coefficients are for room temperature to about 100 °C; further off they drift, and so do these figures.';
    expect([farWords([20, 101]), farWords([-1]), farWords([0, 100])]).toEqual([far, far, null]);
  });

  it.each([
    ['no-name', 'A material needs a name.'],
    ['too-large', '117 is more than any material grows. Look at the point.'],
    ['order', 'The coefficient lies between its least and its most.'],
    [{ kind: 'error', code: 'empty', character: '' }, 'Type millionths a degree, such as 11.7.'],
  ] as const)('says what is wrong with a material: %j', (problem, says) => {
    expect(materialFaultWords(problem, '117')).toBe(says);
  });
});

describe('the shape of a piece', () => {
  it('governs its fit one way or the other', () => {
    expect(governsChoiceWords('extreme')).toBe(
      'Each piece counts by its worst place: a bore where it is smallest, a shaft where it is largest.',
    );
    expect(governsChoiceWords('mean')).toBe(
      'Each piece counts by its mean: somewhere the two are tighter than the figures say.',
    );
  });

  it.each([
    [['Top', 'Bottom'], 'Oval by 0.052 at the top, wide across B.'],
    [['Top'], 'Oval by 0.052, wide across B.'],
  ])('is oval, said with its place where there are several: %j', (stations, says) => {
    const oval = { kind: 'oval', amountPm: 52 * um, station: 0, widestDirection: 1 } as const;
    const facts = {
      shapes: [oval],
      reckonedWith: 'partner',
      widest: null,
      tightest: null,
    } as const;
    const around = { stations, directions: ['A', 'B'], resolutionPm: um, partner: 'P1' };
    expect(shapeEffectWords(facts, around, shown)).toEqual([says]);
  });
});

describe('a run', () => {
  const pieces = [1, 2, 3, 4].map((n) => ({ mark: `W${n}`, ordinal: n }));
  const crossing = { first: 3, best: 3, last: 3 };
  const meets = { kind: 'meets', side: 'upper', crossing } as const;
  const line = (ahead: object, slopeMmPerPiece = 0.0019) =>
    ({ kind: 'line', slopeMmPerPiece, pieces: 3, ahead }) as DriftFacts['drift'];
  const facts: DriftFacts = {
    features: [{ partId: 'web' }],
    pieces,
    points: [1, 2, 3],
    nextPiece: pieces[3]!,
    piecesLeft: 9,
    noOffset: null,
    drift: line(meets),
  };

  it.each<
    [string, Partial<DriftFacts>, { summary?: string; title: string; says: string | RegExp }]
  >([
    [
      'nothing measured',
      { points: [] },
      {
        summary: 'nothing measured yet',
        title: 'Nothing measured yet',
        says: 'Measure the first piece; the chart draws itself as you go.',
      },
    ],
    [
      'steady',
      { drift: line({ kind: 'no-drift' }) },
      {
        summary: 'no drift that can be told from scatter',
        title: 'Steady',
        says: 'No drift that can be told from the scatter of the pieces. Leave the machine alone.',
      },
    ],
    [
      'no limit that way',
      { drift: line({ kind: 'no-limit' }, -0.0019) },
      {
        summary: 'shrinking 0.0019 a piece',
        title: 'Shrinking 0.0019 a piece',
        says: 'No limit lies that way.',
      },
    ],
    [
      'all made',
      { nextPiece: null },
      {
        summary: 'growing 0.0019 a piece',
        title: 'The batch is made',
        says: 'It was growing 0.0019 a piece. Put the machine back before the next batch.',
      },
    ],
    [
      'the rest inside',
      {},
      {
        summary: 'growing 0.0019 a piece; 9 more before the limit',
        title: 'The batch should stay inside',
        says: /W4 to W4 should stay inside\. Measure on\.$/,
      },
    ],
    [
      'hardly a difference',
      { drift: { kind: 'too-little', reason: 'too-few-sizes', pieces: 3 } },
      {
        summary: '3 measured, hardly any difference',
        title: 'Hardly any difference',
        says: 'Fewer than three different sizes since the last event: the gauge is too coarse to show a drift. Here are the dots.',
      },
    ],
    [
      'too few',
      { drift: { kind: 'too-little', reason: 'too-few-pieces', pieces: 3 } },
      {
        summary: '3 measured',
        title: 'Too few to draw a line',
        says: 'Three: too few to draw a line through. Here are the dots.',
      },
    ],
    [
      'too few since an event',
      { drift: { kind: 'too-little', reason: 'too-few-pieces', pieces: 1 } },
      {
        title: 'Too few to draw a line',
        says: 'One since the last event: too few to draw a line through. Here are the dots.',
      },
    ],
    [
      'nothing known',
      { drift: null },
      {
        title: 'Too few to draw a line',
        says: 'None since the last event: too few to draw a line through. Here are the dots.',
      },
    ],
  ])('says of its drift: %s', (_, over, { says, ...said }) => {
    const words = driftWords({ ...facts, ...over }, shown);
    expect(words).toMatchObject(said);
    if (typeof says === 'string') expect(words.says).toBe(says);
    else expect(words.says).toMatch(says);
  });

  it.each<[NoCapabilityReason, number, number | null, string]>([
    [
      'no limits',
      4,
      null,
      'The drawing gives no limits, so there is nothing to be capable of. With one it can be told.',
    ],
    [
      'limits differ',
      4,
      null,
      'These features have not the same limits about their nominals. A run of one of them alone has a capability.',
    ],
    [
      'no spread',
      4,
      null,
      'Every piece reads the same: the gauge shows no spread to go by. Measure with a finer one.',
    ],
    ['too few', 0, null, 'Nothing is measured yet. Thirty steady pieces are wanted.'],
    ['too few', 1, null, 'One piece is too few to say: thirty steady ones are wanted, 29 more.'],
    ['too few', 12, null, '12 pieces are too few to say: thirty steady ones are wanted, 18 more.'],
    [
      'drifting',
      40,
      null,
      'It drifts between events, so there is no one spread to speak of. Hold it still by smaller offsets oftener, then thirty pieces.',
    ],
    [
      'not steady',
      40,
      null,
      'A piece stands farther out than chance puts one of so many. Find what happened there, then thirty steady ones.',
    ],
    [
      'gauge too coarse',
      40,
      null,
      'The gauge is too coarse for these limits: measure with a finer gauge.',
    ],
    [
      'gauge too coarse',
      40,
      20 * um,
      'The gauge is too coarse for these limits: measure with one that shows 0.0020 or finer.',
    ],
    [
      'not normal',
      40,
      null,
      'The sizes do not lie as a normal distribution does (Anderson and Darling, 5 %), which the indices suppose. Look for two tools or two chucks mixed, or steps of the gauge.',
    ],
  ])('says why it has no capability: %s of %d', (reason, count, tolerancePm, says) => {
    const none = { kind: 'none', reasons: [reason], pieces: count, tolerancePm } as const;
    expect(capabilityWords(none, 'piece', shown)).toEqual({ rows: [], says: [says] });
  });

  it.each([
    ['insert changed', 'mixes two inserts'],
    ['offset moved', 'has an offset inside it'],
    ['coolant', 'has a change of coolant inside it'],
    ['warm-up', 'has a warm-up inside it'],
    ['break', 'has a break inside it'],
    ['re-chucked', 'mixes two chuckings'],
    ['other', 'has an event inside it'],
  ] as const)('leaves a group out that an event falls into: %s', (kind, says) => {
    expect(straddleWords({ mark: 'W1 to W5', straddles: [kind, kind] })).toBe(
      `W1 to W5 ${says}: left out of the limits.`,
    );
  });

  it('says what readings of one piece as a group are worth', () => {
    expect(withinPieceWords).toBe(
      'The groups are readings of one piece: they tell form and gauge, not the machine, so the limits of the means come out narrow.',
    );
  });

  it.each([
    [20, 'It went the other way: was the sign turned round?'],
    [-10, 'It is half: was it put in on the diameter where the dial counts the radius?'],
    [-40, 'It is double: was it put in on the radius where the dial counts the diameter?'],
    [0, 'It did not move: was it put in at all?'],
    [-70, 'Measure it again; then look for play in the slide.'],
  ])('asks what became of an offset that moved it %d', (moved, says) => {
    const got = { valuePm: 12 * mm, movedPm: moved * um, asExpected: false };
    const effect = { askedPm: -20 * um, mark: 'W5', expectedPm: 12 * mm, halfPm: 2 * um, got };
    expect(offsetEffectWords(effect, shown)).toMatchObject({
      title: 'The offset did not come out',
      says: expect.stringMatching(`${says.replaceAll('?', '\\?')}$`),
      decide: true,
    });
  });

  it.each([
    ['thimble turn', 'one turn of the thimble'],
    ['sleeve line', 'one line of the sleeve'],
    ['needle turn', 'one turn of the needle'],
    ['wrong frame', 'a frame of another size'],
    ['other unit', 'the other unit'],
    ['decimal point', 'the point in the wrong place'],
    ['swapped figures', 'two figures swapped'],
    ['one figure', 'one figure wrong'],
    ['half or double', 'the radius for the diameter'],
    ['wrong feature', 'another feature'],
    ['far off', 'something else'],
  ] as const)('says which slip an odd piece looks like: %s', (kind, slip) => {
    const odd = { mark: 'W5', offPm: -8 * um, saidRight: false };
    const like = { kind, text: '11.492', insteadPm: 11_992 * um };
    expect(oddWords({ ...odd, slip: like }, shown).says).toBe(
      `0.008 below where the others put it. 11.492 looks like ${slip}, 11.992 without it.`,
    );
    expect(oddSays).toBe(
      'Told by the outlier test about a line, 1 in 20 by chance. Kept as typed; nobody alters it for you.',
    );
  });

  it('is looked at closer, and read aloud', () => {
    const stretch = { prefix: 'W', from: 3, to: 9, last: 40, lowerPm: null, upperPm: null };
    expect(closerWords({ ...stretch, seen: null }, shown)).toBe(
      'W3 to W9 of 40. Nothing measured there.',
    );
    const seen = {
      count: 5,
      least: { ordinal: 4, sizePm: 11_992 * um },
      most: { ordinal: 8, sizePm: 12 * mm },
    };
    const said = 'W3 to W9 of 40, 5 measured. Smallest 11.992 at W4, largest 12.000 at W8.';
    expect(closerWords({ ...stretch, seen }, shown)).toBe(said);
    const limits = { lowerPm: 11_973 * um, upperPm: 12 * mm };
    expect(closerWords({ ...stretch, ...limits, seen }, shown)).toBe(
      `${said} Limits: no smaller than 11.973, no larger than 12.000.`,
    );
    expect(closerWords({ ...stretch, upperPm: 12 * mm, seen }, shown)).toBe(
      `${said} Limits: no larger than 12.000.`,
    );
    const run = {
      feature: { asDrawn: '12.000 0 / −0.027' },
      features: [{ partId: 'web' }],
      limits: { lowerPm: null, upperPm: null },
      pieces,
      points: [],
    };
    expect(runHeadWords(run, shown, [])).toBe('12.000 0 / −0.027. 0 of 4 made.');
    const words = { title: 'Nothing measured yet', says: 'Measure the first piece.' };
    expect(runSentence(run, words, shown)).toBe(
      'Run chart of 0 pieces. Nothing measured yet. Measure the first piece.',
    );
    const both = { ...run, limits: { lowerPm: 0, upperPm: 25_400 * um } };
    expect(runSentence(both, words, inch)).toContain(' inches. ');
  });

  it('names an event with how far an offset was moved', () => {
    const moved = { kind: 'offset moved', note: 'worn', at: '' } as const;
    const radius = { ...moved, offsetPm: -5 * um, offsetDial: 'radius' } as const;
    expect(eventWords(radius, shown)).toEqual({
      title: 'Offset moved −0.005',
      note: '−0.0025 on the radius dial, worn',
    });
    expect(eventWords({ ...radius, offsetDial: null }, shown).note).toBe('worn');
    expect(eventWords(radius)).toEqual({ title: 'Offset moved', note: 'worn' });
  });

  it.each([
    [2, 'second'],
    [8, 'eighth'],
    [9, '9th'],
    [11, '11th'],
    [12, '12th'],
    [21, '21st'],
    [22, '22nd'],
    [33, '33rd'],
    [111, '111th'],
  ])('says one in %d as a person does', (count, word) => {
    expect(ordinalWord(count)).toBe(word);
  });
});
