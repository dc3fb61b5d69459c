import { describe, expect, it } from 'vitest';
import { nearFits } from '@/lib/rules/ways/near-fits';
import { readClasses } from '@/lib/rules/ways/read-classes';

// ISO 286-2 limits as printed in its tables: 25 H7 +21/0, g6 -7/-20; 18 (over 10 to 18) H7 +18/0, p6 +29/+18.
const um = 1_000_000;
const mm = 1_000_000_000;

describe('readClasses', () => {
  it.each(['H7/g6', 'H7 g6', 'H7g6', ' g6 / H7 ', 'H7,g6', 'g6 H7'])('reads %s', (typed) => {
    expect(readClasses(typed, 25 * mm)).toEqual({
      kind: 'classes',
      text: 'H7/g6',
      hole: { text: 'H7', upperPm: 21 * um, lowerPm: 0 },
      shaft: { text: 'g6', upperPm: -7 * um, lowerPm: -20 * um },
      minPm: 7 * um,
      maxPm: 41 * um,
      fit: 'clearance',
    });
  });

  it('has interference below zero', () => {
    expect(readClasses('H7/p6', 18 * mm)).toMatchObject({
      minPm: -29 * um,
      maxPm: 0,
      fit: 'interference',
    });
  });

  it('takes a capital for the hole, on either basis', () => {
    expect(readClasses('G7/h6', 25 * mm)).toMatchObject({ text: 'G7/h6', minPm: 7 * um });
    expect(readClasses('js7/H8', 25 * mm)).toMatchObject({ text: 'H8/js7', fit: 'transition' });
  });

  it.each([
    ['', 25, { code: 'empty' }],
    ['  ', 25, { code: 'empty' }],
    ['H7', 25, { code: 'alone', text: 'H7', side: 'internal' }],
    ['g6/', 25, { code: 'alone', text: 'g6', side: 'external' }],
    ['H7/G6', 25, { code: 'same-side', texts: ['H7', 'G6'], side: 'internal' }],
    ['h7/g6', 25, { code: 'same-side', texts: ['h7', 'g6'], side: 'external' }],
    ['H7+g6', 25, { code: 'character', character: '+' }],
    ['7H/g6', 25, { code: 'character', character: '7' }],
    ['H7//g6', 25, { code: 'character', character: '/' }],
    ['H7/ø6', 25, { code: 'character', character: 'ø' }],
    ['H/g6', 25, { code: 'no-grade', text: 'H' }],
    ['H7/Js6', 25, { code: 'mixed-case', text: 'Js' }],
    ['H7/w6', 25, { code: 'letters', letters: 'w' }],
    ['H7/zd6', 25, { code: 'letters', letters: 'zd' }],
    ['H19/g6', 25, { code: 'grade', text: 'H19' }],
    ['H07/g6', 25, { code: 'grade', text: 'H07' }],
    ['H7/g6/h5', 25, { code: 'too-many', text: 'h5' }],
    // No t shaft up to 24 mm (ISO 286-1, table 5).
    ['H7/t6', 18, { code: 'not-defined', text: 't6' }],
    ['H7/g6', 3200, { code: 'size' }],
  ])('says of "%s" at %d what is wrong', (typed, nominal, fault) => {
    expect(readClasses(typed, nominal * mm)).toEqual({ kind: 'wrong', fault });
  });

  it('needs a nominal only when the pair itself is right', () => {
    expect(readClasses('H7/g6', null)).toEqual({ kind: 'wrong', fault: { code: 'no-nominal' } });
    expect(readClasses('H7', null)).toMatchObject({ fault: { code: 'alone' } });
  });
});

describe('nearFits', () => {
  it('offers the standard pair whose clearances were asked for', () => {
    const found = nearFits({ minPm: 7 * um, maxPm: 41 * um }, 25 * mm);
    expect(found).toHaveLength(3);
    expect(found[0]).toEqual({ text: 'H7/g6', minPm: 7 * um, maxPm: 41 * um, inside: true });
  });

  it('offers none without a nominal, beyond the tables, or for a band of nothing', () => {
    expect(nearFits({ minPm: 0, maxPm: um }, null)).toEqual([]);
    expect(nearFits({ minPm: 0, maxPm: um }, 3151 * mm)).toEqual([]);
    expect(nearFits({ minPm: um, maxPm: um }, 25 * mm)).toEqual([]);
  });
});
