import { describe, expect, it } from 'vitest';
import { pedalAct, pedalsOf, pedalTaught, type PedalKey } from '@/lib/rules/entry-pedal';

const key = (name: string, code = '', held: Partial<PedalKey> = {}): PedalKey => ({
  key: name,
  code,
  ctrl: false,
  alt: false,
  shift: false,
  meta: false,
  ...held,
});
const f13 = key('F13', 'F13');
const b = key('b', 'KeyB');

describe('pedalTaught', () => {
  it.each([
    ['F13', f13],
    ['page down', key('PageDown', 'PageDown')],
    ['a letter that no unit has', b],
    ['a key without a code, by what it prints', key('F14')],
    ['a chord, whatever its letter', key('m', 'KeyM', { ctrl: true, alt: true })],
  ])('takes %s', (_, press) => {
    expect(pedalTaught(press, 'commit', {})).toEqual({ taught: press });
  });

  it.each([...'07.,+-/" mMinthul', '\u00bd'])(
    'refuses %j, which may stand in a length',
    (character) => {
      expect(pedalTaught(key(character, 'Any'), 'next', {})).toEqual({ refused: 'length' });
    },
  );

  it('refuses a figure of the number pad even where it prints none', () => {
    expect(pedalTaught(key('Unidentified', 'Numpad7'), 'next', {})).toEqual({ refused: 'length' });
  });

  it.each(['Enter', 'Tab', 'Backspace', 'Escape', 'ArrowLeft', 'Delete'])(
    'refuses %s, which the entry has',
    (name) => {
      expect(pedalTaught(key(name, name), 'next', {})).toEqual({ refused: 'entry' });
    },
  );

  it('refuses the key of another pedal, and takes the same again for the same', () => {
    expect(pedalTaught(f13, 'next', { commit: f13 })).toEqual({ refused: 'taken' });
    expect(pedalTaught(f13, 'commit', { commit: f13 })).toEqual({ taught: f13 });
  });

  it('waits for the other half of a chord, and refuses what says nothing', () => {
    expect(pedalTaught(key('Control', 'ControlLeft', { ctrl: true }), 'next', {})).toBe('wait');
    expect(pedalTaught(key('Unidentified'), 'next', {})).toEqual({ refused: 'unknown' });
  });
});

describe('pedalAct', () => {
  const pedals = { commit: f13, next: b, 'take back': key('F15') };

  it('knows a pedal by its place, by its name where there is none, and nothing else', () => {
    expect(pedalAct(f13, pedals)).toBe('commit');
    expect(pedalAct(key('\u0431', 'KeyB'), pedals)).toBe('next'); // another layout
    expect(pedalAct(key('b'), pedals)).toBe('next');
    expect(pedalAct(key('F15', 'F15'), pedals)).toBe('take back');
    expect(pedalAct(key('b', 'KeyB', { ctrl: true }), pedals)).toBeNull();
    expect(pedalAct(key('F16', 'F16'), pedals)).toBeNull();
    expect(pedalAct(f13, {})).toBeNull();
  });
});

describe('pedalsOf', () => {
  it('reads what was remembered, and forgets what is broken', () => {
    expect(pedalsOf(JSON.stringify({ commit: f13 }))).toEqual({ commit: f13 });
    expect(pedalsOf(null)).toEqual({});
    expect(pedalsOf('{')).toEqual({});
    expect(pedalsOf('7')).toEqual({});
    expect(pedalsOf(JSON.stringify({ commit: { code: 'F13' }, other: f13 }))).toEqual({});
  });
});
