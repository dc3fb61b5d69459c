import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decimalsForResolution } from '@/lib/units/decimals-for-resolution';
import { decimalsForUncertainty } from '@/lib/units/decimals-for-uncertainty';
import { echoLength } from '@/lib/units/echo-length';
import { formatByResolution } from '@/lib/units/format-by-resolution';
import { formatByUncertainty } from '@/lib/units/format-by-uncertainty';
import { formatLength } from '@/lib/units/format-length';
import { nearestFraction } from '@/lib/units/nearest-fraction';
import { parseLength } from '@/lib/units/parse-length';
import { mmFromPm, pmFromMm, pmPerIn, pmPerMm } from '@/lib/units/picometres';

// Figures without another source were worked out by hand from 1 in = 25.4 mm exactly.
describe('formatLength', () => {
  it('shows millimetres and inches to the decimals asked for', () => {
    expect(formatLength(24_987_000_000, { unit: 'mm', decimals: 3 })).toBe('24.987');
    expect(formatLength(24_985_980_000, { unit: 'in', decimals: 4 })).toBe('0.9837');
    expect(formatLength(24_987_000_000, { unit: 'mm', decimals: 0 })).toBe('25');
    expect(formatLength(50_800_000, { unit: 'thou', decimals: 1, decimal: ',' })).toBe('2,0');
    expect(formatLength(18_000_000, { unit: 'um', decimals: 0 })).toBe('18');
  });

  it('rounds halves to even on the exact value', () => {
    const at = (pm: number) => formatLength(pm, { unit: 'mm', decimals: 3 });
    expect(at(1_000_500_000)).toBe('1.000');
    expect(at(1_001_500_000)).toBe('1.002');
    expect(at(1_000_500_001)).toBe('1.001');
    expect(at(-1_001_500_000)).toBe('\u22121.002');
  });

  it('gives no sign to what rounds to nothing', () => {
    expect(formatLength(-400_000, { unit: 'mm', decimals: 3, sign: 'always' })).toBe('0.000');
    expect(formatLength(0, { unit: 'mm', decimals: 3, sign: 'always' })).toBe('0.000');
    expect(formatLength(600_000, { unit: 'mm', decimals: 3, sign: 'always' })).toBe('+0.001');
  });

  it('agrees with exact rational rounding in both units at any number of decimals', () => {
    const any = fc.integer({ min: -Number.MAX_SAFE_INTEGER, max: Number.MAX_SAFE_INTEGER });
    const units = fc.constantFrom('mm' as const, 'in' as const);
    fc.assert(
      fc.property(any, fc.integer({ min: 0, max: 12 }), units, (pm, decimals, unit) => {
        const below = BigInt(unit === 'mm' ? pmPerMm : pmPerIn);
        const above = BigInt(Math.abs(pm)) * 10n ** BigInt(decimals);
        const shown = formatLength(pm, { unit, decimals }).replace(/[\u2212.]/g, '');
        const twice = 2n * (BigInt(shown) * below - above);
        expect(twice <= below && twice >= -below).toBe(true);
        if (twice === below || twice === -below) expect(BigInt(shown) % 2n).toBe(0n);
      }),
      { numRuns: 500 },
    );
  });

  it('gives the typed digits back', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 9_000_000 }), (um) => {
        const text = formatLength(um * 1_000_000, { unit: 'mm', decimals: 3 });
        const back = parseLength(text, { decimal: '.', unit: 'mm' });
        expect(back).toMatchObject({ pm: um * 1_000_000 });
      }),
    );
  });

  it('refuses parts of a picometre and silly decimals', () => {
    expect(() => formatLength(0.5, { unit: 'mm', decimals: 3 })).toThrow('got 0.5');
    expect(() => formatLength(1, { unit: 'mm', decimals: 13 })).toThrow('got 13');
    expect(() => formatLength(1, { unit: 'mm', decimals: -1 })).toThrow('got -1');
  });
});

describe('formatByUncertainty', () => {
  it('shows a size to the place of its uncertainty', () => {
    // JCGM 100:2008 7.2.6 (from memory): y = 10.057 62 with u = 27 mOhm becomes 10.058 to two figures.
    const size = formatByUncertainty(10_057_620_000, 27_000_000, { unit: 'mm', figures: 2 });
    expect(size).toEqual({ value: '10.058', uncertainty: '0.027', decimals: 3 });
    const one = formatByUncertainty(10_057_620_000, 27_000_000, { unit: 'mm' });
    expect(one).toEqual({ value: '10.06', uncertainty: '0.03', decimals: 2 });
  });

  it('takes one digit fewer when the uncertainty rounds up to a power of ten', () => {
    expect(decimalsForUncertainty(9_700_000, 'mm', 1)).toBe(2);
    expect(decimalsForUncertainty(9_400_000, 'mm', 1)).toBe(3);
    expect(decimalsForUncertainty(9_960_000, 'mm', 2)).toBe(3);
  });

  it('never shows fewer than no decimals, nor more than nine', () => {
    expect(decimalsForUncertainty(12e9, 'mm', 2)).toBe(0);
    expect(decimalsForUncertainty(250e9, 'mm', 1)).toBe(0);
    expect(decimalsForUncertainty(1e-3, 'mm', 2)).toBe(9);
  });

  it('counts inches in inches', () => {
    expect(decimalsForUncertainty(2_000_000, 'in', 1)).toBe(5);
    const size = formatByUncertainty(-1_270_000, 2_000_000, { unit: 'in', decimal: ',' });
    expect(size).toEqual({ value: '\u22120,00005', uncertainty: '0,00008', decimals: 5 });
  });

  it.each([0, -1, NaN, Infinity])('refuses an uncertainty of %s', (bad) => {
    expect(() => decimalsForUncertainty(bad, 'mm')).toThrow(`got ${bad}`);
  });
});

describe('formatByResolution', () => {
  it.each([
    [10_000_000, 'mm', 2],
    [5_000_000, 'mm', 3],
    [1_000_000, 'mm', 3],
    [2_540_000, 'in', 4],
    [10_000_000, 'in', 4],
    [12_700_000, 'in', 4],
    [1_000_000_000, 'mm', 0],
    [20_000_000_000, 'mm', 0],
    [0.1, 'mm', 9],
  ] as const)('fills a resolution of %s pm in %s with %s decimals', (pm, unit, decimals) => {
    expect(decimalsForResolution(pm, unit)).toBe(decimals);
  });

  it('keeps the zeros that were read', () => {
    expect(formatByResolution(25_000_000_000, 10_000_000, { unit: 'mm' })).toBe('25.00');
    const signed = formatByResolution(20_000_000, 10_000_000, { unit: 'mm', sign: 'always' });
    expect(signed).toBe('+0.02');
  });

  it.each([0, -5, NaN])('refuses a resolution of %s', (bad) => {
    expect(() => decimalsForResolution(bad, 'mm')).toThrow(`got ${bad}`);
  });
});

describe('nearestFraction', () => {
  it('finds the nearest sixty-fourth and what is left', () => {
    // 31/64 in = 12 303 125 000 pm, test/reference/unit_parse.json u062.
    expect(nearestFraction(12_300_000_000)).toMatchObject({
      text: '31/64',
      remainderPm: -3_125_000,
    });
    expect(nearestFraction(31_750_000_000)).toMatchObject({ text: '1 1/4', remainderPm: 0 });
    expect(nearestFraction(50_800_000_000)).toMatchObject({ text: '2', numerator: 0 });
    expect(nearestFraction(1)).toMatchObject({ text: '0', remainderPm: 1, isNegative: false });
    expect(nearestFraction(-1)).toMatchObject({ text: '0', remainderPm: -1, isNegative: false });
    expect(nearestFraction(-9_525_000_001)).toMatchObject({ text: '\u22123/8', remainderPm: -1 });
  });

  it('takes the even numerator half way', () => {
    expect(nearestFraction(pmPerIn / 16, 8)).toMatchObject({ text: '0' });
    expect(nearestFraction((3 * pmPerIn) / 16, 8)).toMatchObject({ text: '1/4' });
  });

  it('never leaves more than half a step and adds up exactly', () => {
    const finest = fc.constantFrom(1, 2, 4, 8, 16, 32, 64, 128, 256, 512);
    fc.assert(
      fc.property(fc.integer({ min: -1e13, max: 1e13 }), finest, (pm, most) => {
        const { whole, numerator, denominator, remainderPm, isNegative } = nearestFraction(
          pm,
          most,
        );
        const fraction = whole * pmPerIn + (numerator * pmPerIn) / denominator;
        expect((isNegative ? -fraction : fraction) + remainderPm).toBe(pm);
        expect(2 * Math.abs(remainderPm)).toBeLessThanOrEqual(pmPerIn / most);
      }),
    );
  });

  it('refuses a denominator that is no binary step', () => {
    expect(() => nearestFraction(1, 10)).toThrow('got 10');
    expect(() => nearestFraction(1, 1024)).toThrow('got 1024');
  });
});

describe('echoLength', () => {
  const echo = (text: string, unit: 'mm' | 'in', nominalPm?: number) => {
    const setting = { decimal: '.', unit } as const;
    const parsed = parseLength(text, nominalPm === undefined ? setting : { ...setting, nominalPm });
    return parsed.kind === 'length' ? echoLength(parsed, setting) : parsed;
  };

  it('says a typed length in both units, to the digits it has', () => {
    expect(echo('.9837', 'in')).toEqual({
      own: '0.9837',
      ownUnit: 'in',
      other: '24.986',
      otherUnit: 'mm',
    });
    expect(echo('24.987', 'mm')).toMatchObject({ own: '24.987', other: '0.98374' });
  });

  it('says what a relative entry comes to', () => {
    expect(echo('+0.016', 'mm', 18e9)).toMatchObject({ own: '18.016' });
  });

  it('says a fraction to three and four decimals', () => {
    expect(echo('31/64"', 'mm')).toMatchObject({ own: '12.303', other: '0.4844' });
  });
});

describe('picometres', () => {
  it('goes from millimetres to the nearest picometre and back', () => {
    expect(pmFromMm(24.987)).toBe(24_987_000_000);
    expect(pmFromMm(-0.0000000015)).toBe(-2);
    expect(Object.is(pmFromMm(-1e-13), 0)).toBe(true);
    expect(mmFromPm(25_400_000_000)).toBe(25.4);
  });
});
