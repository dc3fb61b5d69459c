import { describe, expect, it } from 'vitest';
import { gaugeEnough } from '@/lib/rules/cuts/gauge-enough';
import { askedFrom, dialFrom } from '@/lib/rules/cuts/slide';
import { warmPiece } from '@/lib/rules/cuts/warm-piece';
import { mm, um } from '../make';

const facts = {
  sizePm: 100 * mm,
  temperatureMilliC: 80_000,
  expansionPerC: 11.5e-6,
  bandPm: 4 * um,
  resolutionPm: um,
};

describe('warmPiece', () => {
  it('gives the excess of test/reference/thermal.json, tx-1: 100 mm at 80 degrees C, 0.069', () => {
    expect(warmPiece(facts)).toEqual({
      kind: 'wait',
      temperatureMilliC: 80_000,
      excessPm: 69 * um,
    });
  });

  it.each([
    ['more than a quarter of the band', 20_880, 'wait'], // 1.012 um of 4
    ['a quarter of it or less', 20_860, 'go on'], // 0.989 um
    ['just as cold', 19_120, 'wait'],
    ['at 20 degrees C', 20_000, 'go on'],
  ] as const)('says what to do %s', (_, temperatureMilliC, kind) => {
    expect(warmPiece({ ...facts, temperatureMilliC }).kind).toBe(kind);
  });

  it('takes the step of the gauge where there is no band', () => {
    const without = { ...facts, bandPm: null };
    expect(warmPiece({ ...without, temperatureMilliC: 20_880 }).kind).toBe('wait');
    expect(warmPiece({ ...without, temperatureMilliC: 20_860 }).kind).toBe('go on');
  });

  it('says nothing where no temperature was said, and that it cannot where the material is not known', () => {
    expect(warmPiece({ ...facts, temperatureMilliC: null })).toEqual({ kind: 'not said' });
    expect(warmPiece({ ...facts, expansionPerC: null })).toEqual({
      kind: 'not known',
      temperatureMilliC: 80_000,
    });
  });
});

describe('gaugeEnough', () => {
  it.each([
    ['4 to 1', 1, 4, true],
    ['just under', 1.01, 3.96, false],
    ['1.3 to 1', 3, 1.333, false],
    ['10 to 1', 0.4, 10, true],
  ] as const)('judges a band of 0.004: %s', (_, microns, ratio, enough) => {
    const size = { expandedPm: microns * um, gaugeId: 'mic' };
    const said = gaugeEnough(size, { lowerPm: 17.998 * mm, upperPm: 18.002 * mm }, 0.1 * um)!;
    expect(said.ratio).toBeCloseTo(ratio, 2);
    expect(said).toMatchObject({ enough, gaugeId: 'mic' });
  });

  it('gives no ratio to no doubt', () => {
    expect(
      gaugeEnough({ expandedPm: 0, gaugeId: 'mic' }, { lowerPm: 0, upperPm: um }, um),
    ).toBeNull();
  });
});

describe('the slide', () => {
  it.each([
    ['radius', 1, 20, 40],
    ['diameter', 1, 20, 20],
    ['radius', 10, 100, 20], // a top slide set over to 5.74 degrees
  ] as const)('takes off with a %s dial at %d to 1', (dial, fineFeed, onDial, off) => {
    const slide = { dial, divisionPm: 10 * um, fineFeed };
    expect(askedFrom(onDial * um, slide)).toBe(off * um);
    expect(dialFrom(off * um, slide)).toBe(onDial * um);
  });
});
