import { describe, expect, it } from 'vitest';
import { blindWords } from '@/lib/text/bench-blind';
import { questionWords, unkeptWords, wentOnWords } from '@/lib/text/bench-entry';
import { pedalKeyWords, pedalRefusalWords } from '@/lib/text/bench-pedal';
import { takenBackWords, whereWords } from '@/lib/text/bench-where';
import { slipReasons } from '@/lib/text/bench-slip';
import { typedAside } from '@/lib/text/typed-aside';

const um = 1_000_000;

describe('last figures', () => {
  it('are asked about with every size they may end', () => {
    const size = (pm: number) => ({
      pm,
      sizePm: pm,
      isRelative: false,
      resolutionPm: um,
      unit: 'mm' as const,
    });
    expect(
      questionWords('01', 'last-digits', [size(18_001 * um), size(17_901 * um)], {
        unit: 'mm',
        decimal: '.',
      }),
    ).toEqual({
      title: '01: the last figures of which size?',
      answers: ['18.001 mm', '17.901 mm'],
    });
  });
});

describe('a reading whose place nobody said', () => {
  it('is told where it went', () => {
    expect(wentOnWords(' 17.991', 'bottom, across B')).toBe(
      '17.991 was taken for bottom, across B.',
    );
    expect(wentOnWords('17.991', '')).toBe('17.991 was taken for one more.');
  });
});

it('says what V took back where another device has read since', () => {
  expect(takenBackWords('18.004', true)).toBe(
    '18.004, entered here, is struck out. What another device read since stays.',
  );
  expect(takenBackWords('18.004', false)).toBe('18.004, entered here, is put back.');
});

describe('what was typed over', () => {
  it('is named until something is kept', () => {
    expect(unkeptWords([])).toBe('');
    expect(unkeptWords(['18.01'])).toBe('18.01 was not answered, and waits to be placed.');
    expect(unkeptWords(['18.01', '18.02'])).toBe(
      '18.01 and 18.02 were not answered, and wait to be placed.',
    );
  });
});

describe('a set measured unseen', () => {
  it('says how far it is and when it is shown, and no figure', () => {
    expect(blindWords({ taken: 0, of: 6 })).toEqual({
      title: '0 of 6',
      says: 'Nothing is shown until all 6 are taken.',
    });
    expect(blindWords({ taken: 0, of: 1 }).says).toBe('Nothing is shown until it is taken.');
    expect(blindWords({ taken: 2, of: 6 }).says).toBe('Kept. 4 more, then all are shown.');
    expect(blindWords({ taken: 6, of: 6 }).says).toBe('Answer what is asked, then all are shown.');
  });
});

describe('a pedal', () => {
  const key = { code: 'F13', key: 'F13', ctrl: false, alt: false, shift: false, meta: false };

  it('is named by what it sends', () => {
    expect(pedalKeyWords(key)).toBe('F13');
    expect(pedalKeyWords({ ...key, key: 'PageDown', code: 'PageDown' })).toBe('Page Down');
    expect(pedalKeyWords({ ...key, key: 'b', code: 'KeyB', ctrl: true })).toBe('Ctrl and B');
    expect(pedalKeyWords({ ...key, key: 'Unidentified', code: 'F20' })).toBe('F20');
  });

  it('is refused in a sentence that says why and what to do', () => {
    expect(pedalRefusalWords('length', '4')).toBe(
      '"4" belongs to a length. Set the pedal to another key, such as F13, and press it again.',
    );
    expect(pedalRefusalWords('length', ' ')).toMatch(/^Space belongs to a length/);
    expect(pedalRefusalWords('entry', 'Enter')).toMatch(/^Enter has its own work in the entry/);
    expect(pedalRefusalWords('taken', 'F13')).toMatch(/^F13 is taught for another pedal/);
    expect(pedalRefusalWords('unknown', '')).toMatch(/does not say which key/);
  });
});

describe('coming back', () => {
  const facts = {
    mark: 'P5',
    feature: 'Outside',
    place: 'crown, across A',
    figure: '17.999',
    at: '2026-03-14T10:42:00',
    now: new Date('2026-03-14T13:00:00'),
    next: 'crown, across B',
  };

  it('says piece, feature, place, reading, time and what was next', () => {
    expect(whereWords(facts)).toBe(
      'You were here at 10:42: P5 outside, crown, across A, read 17.999. Next: crown, across B.',
    );
  });

  it('says the day where it was another, and when nothing is left', () => {
    const words = whereWords({ ...facts, now: new Date('2026-03-16T07:00:00'), next: '' });
    expect(words).toContain('You were here on 14 March, 10:42');
    expect(words).toContain('Nothing is left to read.');
  });

  it('tells no figure that is hidden', () => {
    expect(whereWords({ ...facts, figure: null, place: '' })).toBe(
      'You were here at 10:42: P5 outside. Next: crown, across B.',
    );
  });
});

describe('a held reading that is kept', () => {
  it('has a reason, one tap each', () => {
    expect(slipReasons.usual).toHaveLength(3);
    expect(new Set(slipReasons.usual).size).toBe(3);
  });
});

describe('what was typed', () => {
  it.each([
    ['18.334', 'mm', ''],
    ['18,334', 'mm', ''],
    [' 18.334 ', 'mm', ''],
    ['34', 'mm', 'typed 34'],
    ['+0.334', 'mm', 'typed +0.334 mm'],
    ['18.334mm', 'mm', 'typed 18.334mm'],
    ['.7218', 'in', 'typed .7218 in'],
  ] as const)('%j in %s beside 18.334 mm says %j', (text, unit, words) => {
    expect(typedAside({ text, unit }, { text: '18.334', unit: 'mm' })).toBe(words);
  });

  it('says nothing of a nought that was left out', () => {
    expect(typedAside({ text: '.9837', unit: 'in' }, { text: '0.9837', unit: 'in' })).toBe('');
  });
});
