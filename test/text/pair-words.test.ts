import { markTakenWords, pairsFinalWords } from '@/lib/text/pair-record-words';
import { describe, expect, it } from 'vitest';
import { chanceWords } from '@/lib/text/chance-words';
import { clearWords } from '@/lib/text/clear-words';
import {
  clearanceVerdict,
  pairWords,
  pieceWords,
  noClearanceWords,
  toMakeWords,
} from '@/lib/text/matrix-words';
import { changeWords, flagWords, type ChangeFacts } from '@/lib/text/pair-flag-words';
import {
  keptApartWords,
  moveWords,
  purposeOptions,
  purposeWords,
  shortageWords,
  workWords,
  type MoveFacts,
  type WorkFacts,
} from '@/lib/text/pairing-words';
import { pairChangedWords } from '@/lib/text/step';

const mm = { unit: 'mm', decimal: '.' } as const;
const comma = { unit: 'mm', decimal: ',' } as const;
const um = 1_000_000;
const size = (microns: number) => 18_000_000_000 + microns * um;

describe('chanceWords', () => {
  it.each([
    [0.5, '50 %'],
    [0.9644, '96 %'],
    [0.9901, '99.0 %'],
    [0.9994, '99.9 %'],
    [0.99999, 'over 99.9 %'],
    [1, 'over 99.9 %'],
    [0.0123, '1.2 %'],
    [0.0001, 'under 0.1 %'],
    [0, 'under 0.1 %'],
  ])('says %d as %s, and never quite none or all', (chance, words) => {
    expect(chanceWords(chance, '.')).toBe(words);
    expect(chanceWords(chance, ',')).toBe(words.replace('.', ','));
  });
});

describe('clearWords', () => {
  it('call a negative clearance tight, and nothing at all clear', () => {
    expect(clearWords(11 * um, um, mm)).toBe('0.011 clear');
    expect(clearWords(-4 * um, um, comma)).toBe('0,004 tight');
    expect(clearWords(-0.2 * um, um, mm)).toBe('0.000 clear');
  });
});

describe('the pairing in words', () => {
  it('says what it was chosen for', () => {
    const five = { pairs: 5, allInside: 0.931 };
    expect(purposeOptions.map(({ value }) => purposeWords(value, five, mm))).toEqual([
      'Chosen so the worst pair is best.',
      'Chosen so all together lie closest to the aim.',
      'Chosen so that all are most likely inside: 93 %.',
    ]);
    expect(purposeWords('most likely', { pairs: 0, allInside: null }, mm)).toBe(
      'No pair lies inside the fit yet.',
    );
    expect(purposeOptions.map(({ hint }) => hint).every((hint) => hint.length > 20)).toBe(true);
  });

  const from: MoveFacts['from'] = {
    mark: 'L3',
    clearancePm: 13 * um,
    because: 'slack',
    goneTo: 'P6',
  };
  const to = { mark: 'L6', clearancePm: 11 * um };
  it.each<[Partial<MoveFacts>, string]>([
    [{}, 'changed liners: in L3 it had 0.013 clear, too slack; in L6 it has 0.011 clear.'],
    [
      { from: { ...from, because: null, clearancePm: 10 * um } },
      'changed liners: in L3 it had 0.010 clear, and P6 has that now; in L6 it has 0.011 clear.',
    ],
    [
      { from: { ...from, because: 'tight', clearancePm: -um } },
      'changed liners: in L3 it had 0.001 tight, too tight; in L6 it has 0.011 clear.',
    ],
    [
      { from: { ...from, clearancePm: null, because: null } },
      'changed liners: it was in L3; in L6 it has 0.011 clear.',
    ],
    [
      { from: { ...from, because: 'unsure', goneTo: null }, to: null },
      'has lost its liner: in L3 it has 0.013 clear, too near to say.',
    ],
    [
      { from: { ...from, because: null, goneTo: null }, to: null },
      'has lost its liner: in L3 it has 0.013 clear.',
    ],
  ])('says a move, why, and where to (%#)', (over, says) => {
    const move = { mark: 'P3', partName: 'Liner', from, to, ...over };
    expect(moveWords(move, um, mm)).toEqual({ mark: 'P3', says });
  });

  it('says how far a pairing goes that is not complete', () => {
    expect(shortageWords({ most: 7, of: 8 })).toBe(
      'No set of pairs puts all 8 inside: 7 is the most.',
    );
    expect(keptApartWords).toMatch(/kept apart leave no complete set/);
  });

  it.each<[WorkFacts['work'], string]>([
    ['cut external', 'Take P3 down 0.012 to 18.012 and it suits L1.'],
    ['cut internal', 'Open L1 by 0.012 to 18.012 and P3 suits it.'],
    ['remake external', 'Make P3 again, to 18.012, for L1.'],
    ['remake internal', 'Make L1 again, or sleeve it, to 18.012, for P3.'],
  ])('says %s as it is said at the bench', (work, says) => {
    const takeOffPm = work.startsWith('cut') ? 12 * um : null;
    const facts = { internal: 'L1', external: 'P3', work, toPm: size(12), takeOffPm };
    expect(workWords(facts, um, mm)).toBe(says);
  });
});

describe('the table of clearances in words', () => {
  const verdict = { state: 'inside', side: null, beyondPm: 0, limitPm: null } as const;

  it.each([
    [verdict, 'inside'],
    [{ ...verdict, state: 'near', side: 'top' } as const, 'inside, near the most'],
    [{ ...verdict, state: 'near', side: 'bottom' } as const, 'inside, near the least'],
    [
      { ...verdict, state: 'unsure', side: 'top', limitPm: 12 * um } as const,
      'unsure, too near 0.012 to say',
    ],
    [{ ...verdict, state: 'unsure' } as const, 'unsure, too near a limit to say'],
    [
      { ...verdict, state: 'out', side: 'top', beyondPm: 4 * um } as const,
      'outside, 0.004 too slack',
    ],
    [
      { ...verdict, state: 'out', side: 'bottom', beyondPm: 4 * um } as const,
      'outside, 0.004 too tight',
    ],
  ])('says what a clearance is to what was wanted (%#)', (facts, words) => {
    expect(clearanceVerdict(facts, um, mm)).toBe(words);
  });

  it('says a cell whole', () => {
    const facts = {
      internal: 'L6',
      external: 'P3',
      clearancePm: 11 * um,
      verdict,
      chance: 0.99999,
      state: 'chosen' as const,
      apart: false,
      leftOut: null,
    };
    expect(pairWords(facts, um, mm)).toBe(
      'P3 in L6: 0.011 clear, inside, over 99.9 % likely inside, chosen',
    );
    expect(pairWords({ ...facts, state: 'locked' }, um, mm)).toMatch(/, locked, kept together$/);
    const out = { ...facts, state: null, apart: true, leftOut: 'P3', chance: 0.5 };
    expect(pairWords(out, um, mm)).toBe(
      'P3 in L6: 0.011 clear, inside, 50 % likely inside, kept apart, P3 is left out',
    );
  });

  it('says a piece to make, and the head of a row', () => {
    const marks = { internal: 'L7', external: 'P7' };
    const about = (pm: number) => ({
      targetPm: pm,
      noLargerPm: pm + 2 * um,
      noSmallerPm: pm - 2 * um,
    });
    const make = { ...marks, make: 'external', target: about(size(0)), aimPm: 10 * um } as const;
    expect(toMakeWords(make, um, mm)).toBe('P7 for L7: to make, to 18.000, aim 0.010 clear');
    const bore = { ...make, make: 'internal', target: about(size(10)) } as const;
    expect(toMakeWords(bore, um, mm)).toBe('L7 for P7: to make, to 18.010, aim 0.010 clear');
    const half = { ...make, aimPm: 20_500_000 };
    expect(toMakeWords(half, um, mm)).toMatch(/, aim 0\.0205 clear$/);
    expect(noClearanceWords(marks, [])).toBe('P7 in L7: not measured');
    expect(noClearanceWords(marks, ['L7'])).toBe('P7 in L7: L7 is still to cut');
    expect(noClearanceWords(marks, ['L7', 'P7'])).toBe('P7 in L7: L7 and P7 are still to cut');
    const head = { mark: 'L7', size: null, leftOut: true, what: 'not measured' } as const;
    expect(pieceWords(head)).toBe('L7, not measured, left out');
    expect(pieceWords({ ...head, size: '18.010', leftOut: false })).toBe('L7, 18.010');
  });
});

describe('the record of pairs in words', () => {
  it('counts final pairs alone, and tells of a mark that is taken', () => {
    expect(pairsFinalWords(0, 8)).toBe('0 of 8 final');
    expect(pairsFinalWords(3, 2)).toBe('3 of 3 final');
    expect(markTakenWords('2', 'P3', 'L6')).toBe(
      'P3 in L6 carries the mark 2 already. Two sets must not look alike.',
    );
  });
});

describe('a flag on a pair in words', () => {
  const was = { clearancePm: 11 * um, expandedPm: um };

  it('says what was recorded and what the readings say now', () => {
    const now = { clearancePm: -2 * um, expandedPm: um };
    expect(flagWords(was, now, um, mm)).toBe(
      'Recorded with 0.011 ± 0.001 clear; now 0.002 ± 0.001 tight.',
    );
    expect(flagWords(was, null, um, mm)).toBe(
      'Recorded with 0.011 ± 0.001 clear; now there is no size to go by.',
    );
    expect(flagWords(was, was, um, mm)).toBe(
      'Recorded with 0.011 ± 0.001 clear; it still is, but what it stood on has changed.',
    );
    expect(flagWords(null, was, um, mm)).toBe('Recorded without a size; now 0.011 ± 0.001 clear.');
  });

  const names = {
    internal: 'L6',
    external: 'P3',
    piece: (id: string) => (id === 'p3' ? 'P3' : 'P4'),
    gauge: (id: string) => (id === 'one' ? 'Mic 1' : 'Mic 2'),
  };
  const limits = { from: { minPm: 8 * um, maxPm: 12 * um }, to: { minPm: -2 * um, maxPm: 9 * um } };
  it.each<[ChangeFacts, string]>([
    [
      { kind: 'taken back', stepPm: um, side: 'external', valuesPm: [size(-2)] },
      'A reading of P3 was taken back: 17.998.',
    ],
    [
      {
        kind: 'taken back',
        stepPm: um,
        side: 'external',
        valuesPm: [1, 2, 3, 4, 5, 6, 7, 8].map(size),
      },
      '8 readings of P3 were taken back: 18.001, 18.002, 18.003, 18.004, 18.005, 18.006, and 2 more.',
    ],
    [
      { kind: 'counts too', stepPm: um, side: 'internal', valuesPm: [size(8)] },
      'A reading of L6 was added: 18.008.',
    ],
    [
      { kind: 'cut since', stepPm: um, side: 'external', valuesPm: [size(0)] },
      'P3 was cut since; it was 18.000.',
    ],
    [
      { kind: 'mistyped', stepPm: um, side: 'external', fromPm: size(-6), toPm: size(-4) },
      'A reading of P3 was corrected from 17.994 to 17.996.',
    ],
    [
      { kind: 'moved', stepPm: um, side: 'external', valuePm: size(0), toPieceId: 'p4' },
      'A reading of P3 was moved to P4: 18.000.',
    ],
    [
      { kind: 'moved', stepPm: um, side: 'external', valuePm: size(0), toPieceId: 'p3' },
      'A reading of P3 was moved to another feature of it: 18.000.',
    ],
    [
      {
        kind: 'moved place',
        stepPm: um,
        side: 'external',
        valuePm: size(0),
        from: 'top A',
        to: 'top B',
      },
      'A reading of P3, 18.000, was moved from top A to top B.',
    ],
    [
      { kind: 'counts too', stepPm: 10 * um, side: 'external', valuesPm: [size(10)] },
      'A reading of P3 was added: 18.01.',
    ],
    [{ kind: 'piece struck', side: 'internal' }, 'L6 was struck out.'],
    [{ kind: 'piece scrapped', side: 'external' }, 'P3 was scrapped.'],
    [{ kind: 'to be sleeved', side: 'internal' }, 'L6 is to be sleeved.'],
    [{ kind: 'piece back', side: 'external' }, 'P3 takes part again.'],
    [{ kind: 'no size', side: 'internal' }, 'L6 has no size any more.'],
    [{ kind: 'sized again', side: 'internal' }, 'L6 has a size again.'],
    [
      { kind: 'other gauge', side: 'external', fromGaugeId: 'one', toGaugeId: 'two' },
      'P3 is told by Mic 2 now; it was Mic 1.',
    ],
    [
      { kind: 'gauge known to', gaugeId: 'one', fromPm: 0.4 * um, toPm: 3 * um },
      'Mic 1 is known to 0.003 now; it was 0.0004.',
    ],
    [
      { kind: 'gauge known to', gaugeId: 'one', fromPm: null, toPm: 3 * um },
      'Mic 1 is known to 0.003 now; that was open.',
    ],
    [
      { kind: 'gauge known to', gaugeId: 'one', fromPm: 3 * um, toPm: null },
      'How well Mic 1 is known is open again; it was 0.003.',
    ],
    [
      { kind: 'gauge reads to', gaugeId: 'one', fromPm: um, toPm: 10 * um },
      'Mic 1 reads to 0.010; it was put down as 0.001.',
    ],
    [{ kind: 'gauge struck', gaugeId: 'one' }, 'Mic 1 was struck out.'],
    [{ kind: 'gauge put back', gaugeId: 'one' }, 'Mic 1 was put back.'],
    [
      { kind: 'wanted', ...limits },
      'Wanted now is 0.002 tight to 0.009 clear; it was 0.008 to 0.012 clear.',
    ],
    [
      {
        kind: 'wanted',
        from: { minPm: 8 * um, maxPm: 12 * um },
        to: { minPm: 7_500_000, maxPm: 12_500_000 },
      },
      'Wanted now is 0.0075 to 0.0125 clear; it was 0.008 to 0.012 clear.',
    ],
    [
      { kind: 'governs', from: 'mean', to: 'extreme' },
      'The smallest bore and the largest shaft govern now; it was the mean sizes.',
    ],
    [
      { kind: 'governs', from: 'extreme', to: 'mean' },
      'The mean sizes govern now; it was the smallest bore and the largest shaft.',
    ],
    [{ kind: 'not known' }, 'The sizes are worked out otherwise than when it was recorded.'],
  ])('says what changed, from what to what (%#)', (change, words) => {
    expect(changeWords(change, names, mm)).toBe(words);
  });

  it('says on the board that what a pair stood on has changed, though its clearance has not', () => {
    const marks = { internal: 'L1', external: 'P1' };
    expect(pairChangedWords(marks, 10 * um, 10 * um, um, mm).says).toBe(
      'in L1 was recorded with 0.010 clear; what that stood on has changed.',
    );
    expect(pairChangedWords(marks, 10 * um, null, um, mm).says).toBe(
      'in L1 was recorded with 0.010 clear; now there is no size to go by.',
    );
  });
});
