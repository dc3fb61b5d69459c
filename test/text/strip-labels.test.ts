import { describe, expect, it } from 'vitest';
import { limitsLabels, offStripWords, partnerLabels, stopLabels } from '@/lib/text/strip-labels';
import { mm, stripVariants } from '../ui/gallery/strips';

const facts = stripVariants['Inside']!;

describe('the words over a strip', () => {
  it('say the limits, and that they are the drawing\u2019s where they are', () => {
    expect(limitsLabels(facts)).toEqual(['17.996 to 18.000']);
    expect(limitsLabels({ ...facts, drawn: true })[0]).toBe('as drawn 17.996 to 18.000');
    expect(limitsLabels({ ...facts, lowerPm: null })[0]).toBe('no larger than 18.000');
    expect(limitsLabels({ ...facts, upperPm: null })[0]).toBe('no smaller than 17.996');
    expect(limitsLabels({ ...facts, lowerPm: null, upperPm: null })).toEqual([]);
  });

  it('get shorter for the partner, its mark last of all', () => {
    expect(partnerLabels(facts.partner!, facts)).toEqual(['L5 bore 18.008', 'L5 18.008', 'L5']);
    expect(partnerLabels({ ...facts.partner!, sizePm: null }, facts)[0]).toBe('L5 bore, to make');
  });

  it('show a partner to the place its own doubt allows', () => {
    const doubtful = { ...facts.partner!, expandedPm: mm(0.02) };
    expect(partnerLabels(doubtful, facts)[0]).toBe('L5 bore 18.01');
    const exact = { ...facts.partner!, expandedPm: null };
    expect(partnerLabels(exact, facts)[0]).toBe('L5 bore 18.008');
  });

  it('say where to stop', () => {
    expect(stopLabels(mm(18.006), facts)).toEqual(['turn to 18.006', '18.006']);
  });
});

describe('the distance of what is off a strip', () => {
  const off = { end: 'over', valuePm: mm(18.498), fromPm: mm(18), stock: false } as const;

  it('says over or under, and the unit where no other stands there', () => {
    expect(offStripWords(off, facts, true)).toBe('0.498 mm over');
    expect(offStripWords(off, facts, false)).toBe('0.498 over');
    const under = { ...off, end: 'under', valuePm: mm(17.9), fromPm: mm(17.996) } as const;
    expect(offStripWords(under, facts, false)).toBe('0.096 under');
  });

  it('says how much metal is left as that, not as a fault', () => {
    expect(offStripWords({ ...off, stock: true }, facts, true)).toBe('0.498 mm to go');
  });

  it('says the size itself where there is no limit to count from', () => {
    expect(offStripWords({ ...off, fromPm: null }, facts, true)).toBe('18.498 mm');
  });
});
