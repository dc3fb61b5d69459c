import { describe, expect, it } from 'vitest';
import {
  choosePairWords,
  lookAtShapesWords,
  noFitsWords,
  noFreePartnerWords,
  noShapesWords,
  noSidesWords,
  onePartWords,
  plumbWords,
  undoInListWords,
  whyUndoneWords,
} from '@/lib/text/fits-sheet-words';
import { listWords } from '@/lib/text/list-words';
import { drawnOutWords, fitOutWords, strikeFitWords } from '@/lib/text/struck-words';
import { nothingToMakeWords } from '@/lib/text/nothing-to-make-words';

describe('listWords', () => {
  it.each([
    [[], ''],
    [['P3'], 'P3'],
    [['P3', 'P4'], 'P3 and P4'],
    [['P3', 'P4', 'P5'], 'P3, P4 and P5'],
    [['1', '2', '3', '4', '5', '6', '7', '8'], '1, 2, 3, 4, 5, 6 and 2 more'],
  ])('puts %j in a row', (names, words) => {
    expect(listWords(names)).toBe(words);
  });
});

describe('what is struck out', () => {
  it('is named with what brings it back', () => {
    expect(fitOutWords('Piston in liner', null)).toBe('Piston in liner is struck out.');
    expect(fitOutWords('Piston in liner', 'Bore')).toBe(
      'Piston in liner is not shown: bore is struck out. Put that back on the job as drawn.',
    );
    expect(strikeFitWords).toBe(
      'It leaves this sheet with its pairs and targets. Nothing is erased; it can be put back here.',
    );
    expect(drawnOutWords('part')).toBe('struck out, with its pieces and features');
    expect(drawnOutWords('feature')).toBe('struck out; its readings stay');
  });
});

describe('the Fits sheet in words', () => {
  it.each([
    [noFitsWords, 'No fits yet. Say which bore runs on which shaft, and how freely.'],
    [plumbWords, 'A plumb line is a pair at the aim; dashed is still to make.'],
    [
      noSidesWords,
      'A fit ties a bore or slot to an outside or width. Add both features to the job first.',
    ],
    [onePartWords, 'A fit ties two parts; these are on one.'],
    [
      choosePairWords,
      'Choose a pair to see how sure it is, to lock it or to keep it apart; the head of a row or column to leave a piece out.',
    ],
    [undoInListWords, 'Undo it in the list of pairs to part it.'],
    [whyUndoneWords, 'Say why: the record keeps it.'],
    [noFreePartnerWords(1), 'suits no free partner.'],
    [noFreePartnerWords(2), 'suit no free partner.'],
    [noShapesWords, 'Nothing is measured yet.'],
    [lookAtShapesWords(200), 'Look at the shapes of 200 pieces'],
  ])('says %j', (words, says) => {
    expect(words).toBe(says);
  });
});

describe('what a fit says when there is nothing to make', () => {
  it.each<[Parameters<typeof nothingToMakeWords>[0], string, string]>([
    [
      { kind: 'no pieces' },
      'Nothing to make yet',
      'One of the two parts has no piece that takes part.',
    ],
    [
      { kind: 'measure first', mark: 'L1' },
      'Nothing to make yet',
      'Measure L1 first: what its partner is made to follows from its size.',
    ],
    [
      { kind: 'no partner', marks: ['P3'], measure: 'L3' },
      'Nothing to make yet',
      'No partner is left for P3: measure L3 first.',
    ],
    [
      { kind: 'no partner', marks: ['P3', 'P4'], measure: null },
      'Nothing left to make',
      'No partner is left for P3 and P4: every bore that is measured and made has one, is promised or left out.',
    ],
    [
      { kind: 'no size', marks: ['L3'] },
      'Nothing left to make',
      'L3 has no size yet, and no piece waits for it.',
    ],
    [
      { kind: 'no size', marks: ['L3', 'L4'] },
      'Nothing left to make',
      'L3 and L4 have no size yet, and no piece waits for them.',
    ],
    [
      { kind: 'all made' },
      'Nothing left to make',
      'Every piece of this fit has a size. What has no partner is named with the pairs.',
    ],
  ])('says %j', (facts, title, says) => {
    expect(nothingToMakeWords(facts)).toEqual({ title, says });
  });
});
