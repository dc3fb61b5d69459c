import { describe, expect, it } from 'vitest';
import {
  matrixNotPrintedWords,
  paperCareWords,
  paperHeadings,
  paperMakeWords,
  paperNoteTitles,
  paperPairWords,
} from '@/lib/text/paper-words';

describe('the printed sheet of a fit in words', () => {
  it('heads its table with the parts as they are called', () => {
    const bus = { title: 'Bus bar', feature: 'bore' };
    const lens = { title: 'Lens', feature: 'outside' };
    expect(paperHeadings(bus, lens)).toEqual([
      'Set', 'Bus bar', 'Bore', 'Lens', 'Outside', 'Clear', 'Verdict', 'Likely inside', 'Remark',
    ]); // prettier-ignore
  });

  it('says what is to make, why a pair is flagged, and what no paper holds', () => {
    expect(paperMakeWords('P1', '18.000')).toBe('make P1 to 18.000');
    expect(paperPairWords({ internal: 'L1', external: 'P1' }, 'P1 was scrapped.')).toBe(
      'P1 in L1: P1 was scrapped.',
    );
    expect(paperNoteTitles).toEqual({ flagged: 'Changed since it was final', undone: 'Undone' });
    expect(matrixNotPrintedWords(30, 20)).toBe(
      'Clearance of every pair: 30 by 20, too many for paper; the screen has them.',
    );
    expect(paperCareWords).toBe(
      'Sizes and estimates for making and fitting. No permission to run hot or under pressure is given or meant; local rules and licensed persons decide that.',
    );
  });
});
