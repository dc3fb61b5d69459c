import { describe, expect, it } from 'vitest';
import { metalLeftSide, verdictOf, type Verdict } from '@/lib/rules/verdict';

// The rule is that of ISO 14253-1:2017 with the guard g = 1.65 u; the sizes are invented. With u = 1 µm
// the guard is 1.65 µm. Limits 10.000 to 10.016 mm, so an eighth of the band is 2 µm.
const um = 1_000_000;
const at = (microns: number) => ({ valuePm: 10_000 * um + microns * um, standardPm: um });
const limits = { lowerPm: 10_000 * um, upperPm: 10_016 * um };
const exact = (microns: number) => ({ ...at(microns), standardPm: 0 });

describe('verdictOf', () => {
  it.each<[string, ReturnType<typeof at>, Verdict['state'], Verdict['side'], number]>([
    ['in the middle', at(8), 'inside', null, 0],
    ['more than an eighth of the band from the top', at(13.9), 'inside', null, 0],
    ['an eighth of the band from the top', at(14), 'near', 'top', 0],
    ['exactly at the guard line', at(16 - 1.65), 'near', 'top', 0],
    ['just over the guard line', at(16 - 1.649), 'unsure', 'top', 0],
    ['on the limit', at(16), 'unsure', 'top', 0],
    ['just over the limit', at(16.5), 'unsure', 'top', 0.5],
    ['exactly a guard beyond', at(16 + 1.65), 'unsure', 'top', 1.65],
    ['beyond the guard above', at(18), 'out', 'top', 2],
    ['beyond the guard below', at(-3), 'to cut', 'bottom', 3],
    ['on the limit, perfectly known', exact(16), 'near', 'top', 0],
    ['a hair over, perfectly known', exact(16.001), 'out', 'top', 0.001],
  ])('says of a bore %s', (_, size, state, side, beyondUm) => {
    const verdict = verdictOf(size, limits, 'bore');
    const limitPm = { top: limits.upperPm, bottom: limits.lowerPm };
    expect(verdict).toEqual({
      state,
      side,
      beyondPm: Math.round(beyondUm * um),
      limitPm: side === null ? null : limitPm[side],
    });
  });

  it('calls a shaft that is large still to cut and one that is small out', () => {
    expect(verdictOf(at(20), limits, 'outside')?.state).toBe('to cut');
    expect(verdictOf(at(-4), limits, 'outside')?.state).toBe('out');
  });

  it('judges by the one limit there is', () => {
    expect(verdictOf(at(-50), { lowerPm: null, upperPm: 10_016 * um }, 'outside')).toEqual({
      state: 'inside',
      side: null,
      beyondPm: 0,
      limitPm: null,
    });
    expect(verdictOf(at(-50), { lowerPm: 10_000 * um, upperPm: null }, 'outside')?.state).toBe(
      'out',
    );
  });

  it('says nothing where the drawing says nothing', () => {
    expect(verdictOf(at(8), { lowerPm: null, upperPm: null }, 'bore')).toBeNull();
  });

  it('never says inside when the doubt fills the band', () => {
    for (const microns of [0, 4, 8, 12, 16]) {
      const size = { ...at(microns), standardPm: 8 * um };
      expect(verdictOf(size, limits, 'bore')?.state).toBe('unsure');
    }
  });
});

describe('metalLeftSide', () => {
  it('is above for what is turned down and below for what is opened out', () => {
    expect(metalLeftSide('outside')).toBe('top');
    expect(metalLeftSide('length')).toBe('top');
    expect(metalLeftSide('bore')).toBe('bottom');
    expect(metalLeftSide('depth')).toBe('bottom');
    expect(metalLeftSide('run-out')).toBeNull();
  });
});
