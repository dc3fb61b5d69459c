import { describe, expect, it } from 'vitest';
import {
  governsChoiceWords,
  governsWords,
  noShapeWords,
  shapeEffectWords,
  tooFewPlacesWords,
} from '@/lib/text/shape-effect-words';

const mm = { unit: 'mm', decimal: '.' } as const;
const um = 1_000_000;
const around = {
  stations: ['Top', 'middle', 'bottom'],
  directions: ['A', 'B'],
  resolutionPm: um,
  partner: 'P1',
};
const nothing = { shapes: [], reckonedWith: 'partner', widest: null, tightest: null } as const;
const shapes = (...list: object[]) =>
  shapeEffectWords({ ...nothing, shapes: list as never }, around, mm);

describe('shapeEffectWords', () => {
  it('says the shape, the amount and the end', () => {
    expect(shapes({ kind: 'oval', amountPm: 52 * um, station: 0, widestDirection: 1 })).toEqual([
      'Oval by 0.052 at the top, wide across B.',
    ]);
    expect(shapes({ kind: 'taper', amountPm: 6 * um, wideEnd: 'first' })).toEqual([
      'Tapered: top 0.006 larger than bottom.',
    ]);
    expect(shapes({ kind: 'taper', amountPm: 6 * um, wideEnd: 'last' })).toEqual([
      'Tapered: bottom 0.006 larger than top.',
    ]);
    expect(shapes({ kind: 'barrel', amountPm: 3 * um, station: 1 })).toEqual([
      'Barrelled: middle 0.003 larger than the ends.',
    ]);
    expect(shapes({ kind: 'waist', amountPm: 3 * um, station: 1 })).toEqual([
      'Waisted: middle 0.003 smaller than the ends.',
    ]);
    expect(shapes({ kind: 'bell', amountPm: 30 * um, end: 'last' })).toEqual([
      'Bell-mouthed at the bottom: 0.030 larger there than in the rest.',
    ]);
    expect(shapes({ kind: 'bell', amountPm: 30 * um, end: 'first' })[0]).toMatch(/at the top/);
  });

  it('says what it does to the fit', () => {
    const widest = { station: 'Top', direction: 'B', clearancePm: 62 * um };
    expect(shapeEffectWords({ ...nothing, widest }, around, mm)).toEqual([
      'Across B at the top the clearance will reach 0.062 with P1.',
    ]);
    expect(shapeEffectWords({ ...nothing, widest, reckonedWith: 'aim' }, around, mm)).toEqual([
      'Across B at the top the clearance will reach 0.062 with a partner at the aim.',
    ]);
    const tight = { ...widest, clearancePm: -4 * um };
    expect(shapeEffectWords({ ...nothing, widest: tight }, around, mm)).toEqual([
      'Across B at the top it will still be 0.004 tight with P1.',
    ]);
    expect(shapeEffectWords({ ...nothing, tightest: tight }, around, mm)).toEqual([
      'Across B at the top it will be 0.004 tight with P1.',
    ]);
    const close = { ...widest, clearancePm: 2 * um };
    expect(shapeEffectWords({ ...nothing, tightest: close }, around, mm)).toEqual([
      'Across B at the top the clearance will be only 0.002 with P1.',
    ]);
  });

  it('names no station where there is one, and no direction either', () => {
    const one = { ...around, stations: ['middle'], directions: ['A', 'B'] };
    const widest = { station: 'middle', direction: 'B', clearancePm: 62 * um };
    const oval = { kind: 'oval', amountPm: 52 * um, station: 0, widestDirection: 1 } as const;
    expect(shapeEffectWords({ ...nothing, shapes: [oval], widest }, one, mm)).toEqual([
      'Oval by 0.052, wide across B.',
      'Across B the clearance will reach 0.062 with P1.',
    ]);
    const single = { ...one, directions: ['A'] };
    expect(shapeEffectWords({ ...nothing, widest }, single, mm)).toEqual([
      'There the clearance will reach 0.062 with P1.',
    ]);
  });
});

describe('pieces without a shape', () => {
  it('are told from pieces read at too few places', () => {
    expect(noShapeWords(['L1', 'L2'])).toBe(
      'L1, L2: nothing larger than the doubt of the readings.',
    );
    expect(tooFewPlacesWords(['L3'])).toBe('L3: read at too few places to tell a shape.');
  });
});

describe('what governs, in words', () => {
  it('names the place, or the mean', () => {
    expect(governsWords({ station: 'bottom', direction: 'A' }, around)).toBe('bottom, across A');
    expect(governsWords(null, around)).toBe('the mean');
    const one = { stations: ['middle'], directions: ['A', 'B'] };
    expect(governsWords({ station: 'middle', direction: 'B' }, one)).toBe('across B');
  });

  it('says what the choice means', () => {
    expect(governsChoiceWords('extreme')).toMatch(/^Each piece counts by its worst place/);
    expect(governsChoiceWords('mean')).toMatch(/^Each piece counts by its mean: somewhere/);
  });
});
