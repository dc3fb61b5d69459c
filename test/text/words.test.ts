import { describe, expect, it } from 'vitest';
import { driftWords, type DriftFacts } from '@/lib/text/drift-words';
import { drawnEchoWords, drawnFaultWords } from '@/lib/text/draft-words';
import {
  aimSteps,
  clearanceStep,
  clearanceSteps,
  fitLimitsWords,
  stepWords,
  wantedWords,
} from '@/lib/text/fit-words';
import { gaugeFaultWords } from '@/lib/text/gauge-fault-words';
import { gaugeWords } from '@/lib/text/gauge-words';
import { lengthWords } from '@/lib/text/length-words';
import { problemWords } from '@/lib/text/problem-words';
import { runHeadWords, runSentence } from '@/lib/text/run-words';
import {
  cellDecisionWords,
  makeWords,
  mateStateWords,
  mateWords,
  noPartnerWords,
  pairChangedWords,
} from '@/lib/text/step';

const mm = { unit: 'mm', decimal: '.' } as const;
const inch = { unit: 'in', decimal: '.' } as const;
const um = 1_000_000;

describe('driftWords', () => {
  const pieces = Array.from({ length: 16 }, (_, i) => ({ mark: `W${i + 1}`, ordinal: i + 1 }));
  const meets = { kind: 'meets', side: 'upper', crossing: { first: 14.8, best: 16.1, last: 17.7 } };
  const run = (over: Partial<DriftFacts> = {}): DriftFacts => ({
    features: [{ partId: 'web' }],
    pieces,
    points: Array.from({ length: 11 }),
    nextPiece: pieces[11]!,
    piecesLeft: 3,
    noOffset: null,
    drift: { kind: 'line', slopeMmPerPiece: 0.00193, pieces: 7, ahead: meets as never },
    ...over,
  });

  it('says how many more, and what then', () => {
    expect(driftWords(run(), mm)).toEqual({
      summary: 'growing 0.0019 a piece; 3 more before the limit',
      title: 'Three more, then act',
      says: 'Growing 0.0019 a piece; about W16 is the last good one (between W14 and W17). W12 to W14 should stay inside. W15 may not. After W14, turn the insert, or put this in:',
    });
  });

  it('says which piece is the last good one by the line, and between which it may be', () => {
    const at = (first: number, best: number, last: number) => {
      const ahead = { kind: 'meets', side: 'upper', crossing: { first, best, last } } as const;
      const drift = { kind: 'line', slopeMmPerPiece: -0.00096, pieces: 7, ahead } as const;
      return driftWords(run({ drift }), mm).says.split('. ')[0];
    };
    expect(at(13.2, 14.9, 16.0)).toBe(
      'Shrinking 0.00096 a piece; about W14 is the last good one (between W13 and W16)',
    );
    expect(at(14.1, 14.5, 14.9)).toBe('Shrinking 0.00096 a piece; about W14 is the last good one');
    expect(at(14.1, 19.5, Infinity)).toBe(
      'Shrinking 0.00096 a piece; about W19 is the last good one, W14 at the earliest',
    );
  });

  it('counts turns where a piece has several, and pieces where features of several parts take turns', () => {
    const says = (...partIds: string[]) =>
      driftWords(run({ features: partIds.map((partId) => ({ partId })) }), mm);
    expect(says('web', 'web').says).toContain('Growing 0.0019 a turn; about');
    expect(says('web', 'web').summary).toBe('growing 0.0019 a turn; 3 more before the limit');
    expect(says('web', 'pin').says).toContain('Growing 0.0019 a piece; about');
    expect(says('web', 'pin', 'web').says).toContain('Growing 0.0019 a turn; about');
  });

  it('says why there is no offset to put in', () => {
    const says = (over: Partial<DriftFacts>) => driftWords(run(over), mm).says;
    expect(says({ noOffset: 'less than a division' })).toContain(
      'After W14, turn the insert. An offset would be less than one division of the dial.',
    );
    expect(says({ noOffset: 'one limit', piecesLeft: 0 })).toContain(
      'W12 may not stay inside. Turn the insert. There is no second limit to begin anew at.',
    );
    expect(says({ noOffset: 'no room' })).toContain(
      'turn the insert. The pieces scatter too much for an offset to begin anew between these limits.',
    );
  });

  it('says so where no limit lies in the way of a drift', () => {
    const ahead = { kind: 'no-limit' } as const;
    const drift = { kind: 'line', slopeMmPerPiece: 0.00193, pieces: 7, ahead } as const;
    expect(driftWords(run({ drift, piecesLeft: null }), mm)).toMatchObject({
      title: 'Growing 0.0019 a piece',
      says: 'No limit lies that way.',
    });
  });

  it('says one piece as one piece, and none as now', () => {
    expect(driftWords(run({ piecesLeft: 1 }), mm).says).toContain(
      'W12 should stay inside. W13 may',
    );
    expect(driftWords(run({ piecesLeft: 0 }), mm).title).toBe('Act before the next piece');
  });

  it('does not send anyone to act when the batch ends first', () => {
    expect(driftWords(run({ piecesLeft: 9 }), mm).title).toBe('The batch should stay inside');
    expect(driftWords(run({ nextPiece: null }), mm).title).toBe('The batch is made');
  });

  it('draws no conclusion from too few pieces, and says so', () => {
    const few = driftWords(
      run({
        points: [1, 2, 3, 4],
        piecesLeft: null,
        drift: { kind: 'too-little', reason: 'too-few-pieces', pieces: 4 },
      }),
      mm,
    );
    expect(few.says).toBe('Four: too few to draw a line through. Here are the dots.');
  });

  it('leaves a steady machine alone', () => {
    const steady = run({
      piecesLeft: null,
      drift: { kind: 'line', slopeMmPerPiece: 0.00001, pieces: 9, ahead: { kind: 'no-drift' } },
    });
    expect(driftWords(steady, mm).says).toContain('Leave the machine alone');
  });
});

describe('fit words', () => {
  const fit = { minPm: 8 * um, maxPm: 12 * um, aimPm: 10 * um };

  it('say what is wanted and what it leaves the partner', () => {
    expect(wantedWords(fit, mm)).toBe('Wanted 0.008 to 0.012 clear, aim 0.010.');
    expect(fitLimitsWords('Liner', fit, mm)).toBe('its liner \u22120.008 / \u22120.012');
  });

  it('say interference as tight', () => {
    expect(wantedWords({ minPm: -20 * um, maxPm: -5 * um, aimPm: -12 * um }, mm)).toBe(
      'Wanted 0.005 to 0.020 tight, aim 0.012 tight.',
    );
    expect(wantedWords({ minPm: -5 * um, maxPm: 5 * um, aimPm: 0 }, mm)).toBe(
      'Wanted 0.005 tight to 0.005 clear, aim 0.000.',
    );
  });

  it('keep a place more where a figure was given to it', () => {
    const tenths = { minPm: 7_620_000, maxPm: 20_320_000, aimPm: 13_970_000 };
    expect(wantedWords(tenths, inch)).toBe('Wanted 0.0003 to 0.0008 clear, aim 0.00055.');
    expect(aimSteps(tenths.aimPm, inch)).toBe('5.5');
    expect(aimSteps(tenths.aimPm, inch, 254_000)).toBe('55');
    // A narrow band is counted in tenths of that already: 0.000875 and 0.00125 in.
    const narrow = { minPm: 22_225_000, maxPm: 31_750_000, aimPm: 26_987_500 };
    expect(wantedWords(narrow, inch)).toBe('Wanted 0.00088 to 0.00125 clear, aim 0.00106.');
    // In millimetres its ends have five places: what was not given to a place is not shown to it.
    expect(wantedWords(tenths, mm)).toBe('Wanted 0.008 to 0.020 clear, aim 0.014.');
    const half = { minPm: 7_500_000, maxPm: 33_500_000, aimPm: 20_500_000 };
    expect(wantedWords(half, mm)).toBe('Wanted 0.0075 to 0.0335 clear, aim 0.0205.');
    expect(fitLimitsWords('Liner', half, mm)).toBe('its liner \u22120.0075 / \u22120.0335');
    expect(aimSteps(half.aimPm, { unit: 'mm', decimal: ',' })).toBe('20,5');
    expect(aimSteps(-half.aimPm, mm)).toBe('\u221220.5');
    expect([10 * um, 20_400_300].map((pm) => aimSteps(pm, mm))).toEqual(['10', '20']);
  });

  it('count steps of a thousandth or a ten-thousandth of an inch', () => {
    expect(clearanceSteps(-1 * um, mm)).toBe('\u22121');
    // 0.0079 and 0.0081 mm are both 0.0003 in: counted in 0.00001 in they are told apart.
    const tenth = clearanceStep(fit, 'in', um);
    expect([7.9, 8.1].map((microns) => clearanceSteps(microns * um, inch, tenth))).toEqual([
      '31',
      '32',
    ]);
    expect(stepWords(inch, tenth)).toBe('in 0.00001 inch');
    expect(wantedWords(fit, inch)).toBe('Wanted 0.00031 to 0.00047 clear, aim 0.00039.');
    expect(fitLimitsWords('Liner', fit, inch)).toBe('its liner \u22120.00031 / \u22120.00047');
    expect(clearanceStep(fit, 'mm', um)).toBe(um);
    // No finer than the gauges show, and only where the band asks for it.
    expect(clearanceStep(fit, 'in', 2_540_000)).toBe(2_540_000);
    expect(clearanceStep({ minPm: 0, maxPm: 2 * um }, 'mm', 100_000)).toBe(100_000);
    expect(clearanceStep({ minPm: 0, maxPm: 40 * um }, 'in', um)).toBe(2_540_000);
    expect(clearanceSteps(25_400_000, inch)).toBe('10');
  });
});

describe('decisions in words', () => {
  const cell = {
    mark: 'P4',
    featureName: 'Bush seat',
    featureKind: 'bore',
    size: '7.018',
    beyondPm: 3 * um,
    side: 'top',
    limitPm: 7_015 * um,
    resolutionPm: um,
  } as const;

  it('put the mark first, then the amount, then what to do', () => {
    expect(cellDecisionWords({ ...cell, kind: 'out' }, mm)).toEqual({
      mark: 'P4',
      says: 'bush seat is 0.003 large. Make its partner to suit, or sleeve it.',
    });
    expect(cellDecisionWords({ ...cell, kind: 'unsure' }, mm).says).toBe(
      'bush seat is 7.018, too near 7.015 to say. Measure it again, finer.',
    );
    expect(cellDecisionWords({ ...cell, kind: 'held' }, mm).says).toContain('is held');
    expect(
      cellDecisionWords({ ...cell, kind: 'out', featureKind: 'outside', side: 'bottom' }, mm).says,
    ).toContain('0.003 small. Find another partner');
  });

  it('say what to make, what suits nothing, and what a final pair has become', () => {
    const target = {
      targetPm: 18_006 * um,
      noLargerPm: 18_008 * um,
      noSmallerPm: 18_004 * um,
    };
    expect(makeWords('P7', target, 'L7', um, mm)).toBe('Make P7 to 18.006, for L7');
    // Where whole steps have no room, to the place of its limits.
    const narrow = {
      targetPm: 18_005_500_000,
      noLargerPm: 18_005_900_000,
      noSmallerPm: 18_005_100_000,
    };
    expect(makeWords('P7', narrow, 'L7', um, mm)).toBe('Make P7 to 18.0055, for L7');
    expect(noPartnerWords('P3', 'Power piston in liner').says).toContain('suits no free partner');
    const marks = { internal: 'L1', external: 'P1' };
    expect(pairChangedWords(marks, 10 * um, 11 * um, um, mm).says).toBe(
      'in L1 was recorded with 0.010 clear; the readings now give 0.011 clear.',
    );
    expect(pairChangedWords(marks, 10 * um, -2 * um, um, mm).says).toBe(
      'in L1 was recorded with 0.010 clear; the readings now give 0.002 tight.',
    );
    expect(pairChangedWords(marks, null, 11 * um, um, mm).says).toBe(
      'in L1 was recorded without a size; the readings now give 0.011 clear.',
    );
  });
});

describe('a partner on the board', () => {
  it('is in what is around it, or with what is inside it, and says what is settled', () => {
    expect(mateWords('L1', 'external')).toBe('in L1');
    expect(mateWords('P1', 'internal')).toBe('with P1');
    expect((['final', 'locked', 'chosen', 'to make'] as const).map(mateStateWords)).toEqual([
      'final',
      '',
      '',
      'to make',
    ]);
  });
});

describe('faults in words', () => {
  it('name the character that is no part of a size', () => {
    const read = { kind: 'error', code: 'two-marks', character: '.' } as const;
    expect(lengthWords(read, '18..2')).toBe('"18..2" is not a size at ".". Type it again.');
  });

  it('never send a person a code', () => {
    const codes = ['empty', 'no-nominal', 'finer-than-picometre', 'too-long', 'tolerance', 'x'];
    const questions = ['fraction-unit', 'unit-tenths', 'unit-mil', 'sign-large', 'mark-thousands'];
    const said = [
      ...codes.map((code) => lengthWords({ kind: 'error', code, character: 'x' }, '1x')),
      ...questions.map((code) => lengthWords({ kind: 'question', code }, '1x')),
      ...['fit', 'sign-first', 'unsigned-deviation', 'too-many-numbers', 'limits-apart'].map(
        (code) => drawnFaultWords({ kind: 'error', code, character: '' }, '1x'),
      ),
      ...['one-deviation', 'limits-or-deviation', 'unit-mil'].map((code) =>
        drawnFaultWords({ kind: 'question', code }, '1x'),
      ),
      drawnFaultWords({ kind: 'class', isoClass: 'A9' }, '0.5 A9'),
      lengthWords('order', ''),
      lengthWords('aim outside', ''),
      gaugeFaultWords({ field: 'name', problem: 'missing' }, ''),
      gaugeFaultWords({ field: 'resolution', problem: 'missing' }, ''),
      gaugeFaultWords({ field: 'rangeHigh', problem: 'range' }, ''),
      gaugeFaultWords({ field: 'rangeHigh', problem: 'not above zero' }, ''),
      problemWords(null),
      ...[0, 409, 422, 500].map((status) =>
        problemWords({ status, code: 'x-y', title: 'The request is not whole', errors: [] }),
      ),
    ];
    for (const sentence of said) {
      expect(sentence).toMatch(/^["\p{L}\d].*[.?]$/u);
      expect(sentence).not.toMatch(/[a-z]-[a-z]+-[a-z]|undefined|null|please|sorry|!/i);
    }
  });

  it('say that nothing was changed when the notebook refuses', () => {
    const stale = { status: 409, code: 'stale', title: '', errors: [] };
    expect(problemWords(stale)).toContain('Somebody changed this');
    const refused = {
      status: 422,
      code: 'x',
      title: 'Two pieces have that mark',
      errors: [{ at: 'mark', says: 'P1 is taken' }],
    };
    expect(problemWords(refused)).toBe(
      'Two pieces have that mark: P1 is taken. Nothing was changed.',
    );
    // The store's own reason is title and fault in one: it is said once.
    const title = 'Another piece of this part has this mark';
    const taken = { status: 422, code: 'mark-taken', title, errors: [{ at: 'mark', says: title }] };
    expect(problemWords(taken)).toBe(`${title}. Nothing was changed.`);
    expect(problemWords({ ...taken, code: 'final-pairs' })).toBe(
      'Final pairs stand on this. Undo them on the Fits sheet first, each with its reason. Nothing was changed.',
    );
    expect(problemWords({ ...taken, code: 'pair-mark-taken' })).toBe(
      'Another final pair of this fit carries that mark by now. Give this pair another mark, or make it final again: it then takes the next free one. Nothing was changed.',
    );
  });
});

describe('other words', () => {
  it('echo a drawn size as the limits it means', () => {
    const drawn = { nominalPm: 18_000 * um, upperPm: 18 * um, lowerPm: 0 };
    expect(drawnEchoWords(drawn, mm)).toBe('18.000 to 18.018 mm');
    expect(drawnEchoWords({ ...drawn, upperPm: null, lowerPm: null }, mm)).toContain(
      'no tolerance',
    );
    expect(drawnEchoWords({ ...drawn, lowerPm: null }, mm)).toBe('18.018 mm or less');
    expect(drawnEchoWords({ ...drawn, upperPm: null }, inch)).toBe('0.7087 inches or more');
  });

  it('say what a gauge shows and what nobody knows of it', () => {
    const gauge = {
      unit: 'mm',
      resolutionPm: um,
      uncertaintyPm: 300_000,
      rangeLowPm: 0,
      rangeHighPm: 25_000 * um,
      checkedOn: null,
    } as const;
    expect(gaugeWords(gauge, '.')).toEqual({
      resolution: '0.001 mm',
      uncertainty: '\u00b1 0.0003 mm',
      range: '0 to 25 mm',
      checked: null,
    });
    expect(gaugeWords({ ...gauge, uncertaintyPm: null, rangeHighPm: null }, ',')).toMatchObject({
      uncertainty: null,
      range: 'from 0 mm',
    });
  });

  it('say a run in one line and in one sentence', () => {
    const point = { mark: 'W1', valuePm: 11_990 * um, size: { expandedPm: 900_000, gaugeId: 'a' } };
    const run = {
      feature: { asDrawn: '12.000 0 / \u22120.027' },
      features: [{ partId: 'web' }],
      limits: { lowerPm: 11_973 * um, upperPm: 12_000 * um },
      pieces: [{ mark: 'W1' }, { mark: 'W2' }],
      points: [point],
    };
    const gauges = [
      { id: 'a', name: 'Mic 2' },
      { id: 'b', name: 'Mic 3' },
    ];
    expect(runHeadWords(run, mm, gauges)).toBe(
      '12.000 0 / \u22120.027. 1 of 2 made, each \u00b1 0.001, Mic 2.',
    );
    const two = [point, { ...point, size: { ...point.size, gaugeId: 'b' } }];
    expect(runHeadWords({ ...run, points: two }, mm, gauges)).toBe(
      '12.000 0 / \u22120.027. 2 of 2 made, each \u00b1 0.001.',
    );
    expect(runSentence(run, { title: 'Steady', says: 'Go on.' }, mm)).toBe(
      'Run chart of 1 piece. Limits 11.973 to 12.000 millimetres. Last piece W1, 11.990. Steady. Go on.',
    );
  });

  it('say a run of several features as departures, with their signs', () => {
    const run = {
      feature: { asDrawn: '12' },
      features: [{ partId: 'web' }, { partId: 'pin' }],
      limits: { lowerPm: -27 * um, upperPm: 0 },
      pieces: [{ mark: 'W1' }],
      points: [{ mark: 'W1', valuePm: -10 * um, size: { expandedPm: 900_000, gaugeId: 'a' } }],
    };
    expect(runHeadWords(run, mm, [])).toBe(
      'Two features alike, each from its own nominal. 1 of 1 made, each \u00b1 0.001.',
    );
    expect(runSentence(run, { title: 'Steady', says: 'Go on.' }, mm)).toContain(
      'Limits \u22120.027 to 0.000 millimetres. Last piece W1, \u22120.010.',
    );
    // Both on one part: each has a turn of its own on every piece.
    const turns = { ...run, features: [{ partId: 'web' }, { partId: 'web' }] };
    expect(runHeadWords(turns, mm, [])).toContain('1 of 1 turns made');
    expect(runSentence(turns, { title: 'Steady', says: 'Go on.' }, mm)).toMatch(
      /^Run chart of 1 turn\. .* Last turn W1,/,
    );
  });
});
