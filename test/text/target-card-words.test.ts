import { describe, expect, it } from 'vitest';
import {
  besideAimWords,
  governedByWords,
  leftOnWords,
  moreToMakeWords,
  noDialWords,
  notProvableWords,
  nowOnWords,
  pastDrawnWords,
  targetHeatRemark,
  targetHeatRows,
} from '@/lib/text/target-card-words';

const mm = { unit: 'mm', decimal: '.' } as const;

describe('the target card in words', () => {
  it('says where a fit asks for what the drawing does not allow', () => {
    const drawn = { lowerPm: 17_994_000_000, upperPm: 17_998_500_000 };
    const say = (over: Partial<Record<keyof typeof drawn, null>> = {}) =>
      pastDrawnWords({ ...drawn, ...over }, 1_000_000, mm);
    expect(say()).toBe(
      'Drawn 17.994 to 17.9985: this target is outside it. Made so, it is a departure to note on the Board.',
    );
    expect(say({ upperPm: null })).toContain('Drawn no smaller than 17.994: this target');
    expect(say({ lowerPm: null })).toContain('Drawn no larger than 17.9985: this target');
  });

  it('says where the target is not at the aim', () => {
    expect(besideAimWords(18_002_000_000, 1_000_000, mm)).toBe(
      'At the aim itself, 18.002, these gauges could not prove the fit: this is the nearest size at which they can.',
    );
  });

  it.each([
    ['outside', false, 'On the lathe now', 'Left to turn, on diameter'],
    ['outside', true, 'On the lathe now', 'Left to turn, then lap'],
    ['bore', false, 'On the lathe now', 'Left to bore, on diameter'],
    ['slot', false, 'It is now', 'Left to take off'],
    ['width', true, 'It is now', 'Left to take off, then lap'],
  ] as const)('speaks of a %s as it is made (lapped: %s)', (kind, laps, now, left) => {
    expect([nowOnWords(kind), leftOnWords(kind, laps)]).toEqual([now, left]);
  });

  it('names the reading that governs, the mean, or the only place there is', () => {
    const plan = { stations: ['top', 'bottom'], directions: ['A', 'B'] };
    const place = { station: 'bottom', direction: 'A' };
    expect(governedByWords('L7', place, plan)).toBe('L7, bottom, across A');
    expect(governedByWords('L7', null, plan)).toBe('L7, the mean');
    const one = { stations: ['middle'], directions: ['A'] };
    expect(governedByWords('L7', { station: 'middle', direction: 'A' }, one)).toBe('L7');
  });

  it('says what is not known, and how many more there are', () => {
    expect(noDialWords).toEqual({ label: 'On the dial', says: 'no slide said yet' });
    expect([1, 5].map(moreToMakeWords)).toEqual(['and one other', 'and 5 others']);
    expect(notProvableWords('L7')).toBe(
      'The doubt of the two sizes is wider than the fit: these gauges cannot prove it. Measure L7 again, finer, or make it to the target and say so on the record.',
    );
  });

  it('estimates the clearance warm and starting, and when the two touch', () => {
    const heat = {
      warm: { temperatureC: 80, clearancePm: 9_000_000 },
      starting: { outerC: 20, innerC: 50, clearancePm: -4_000_000 },
      touchesHotterByC: 51.6,
    };
    const names = { outer: 'liner', inner: 'piston' };
    expect(targetHeatRows(heat, names, mm)).toEqual([
      { label: 'Warm: both 80\u00a0°C', figure: 'about 0.009 clear' },
      { label: 'Starting: liner 20\u00a0°C, piston 50\u00a0°C', figure: 'about 0.004 tight' },
      { label: 'Touches when piston is hotter by', figure: 'about 52\u00a0°C' },
    ]);
    expect(targetHeatRows({ ...heat, touchesHotterByC: null }, names, mm)).toHaveLength(2);
    expect(targetHeatRemark(true)).toBe(
      'Estimates, at temperatures that are only to begin with: say your own under Hot and cold.',
    );
    expect(targetHeatRemark(false)).toBe(
      'Estimates: free expansion, no load. More under Hot and cold.',
    );
  });
});
