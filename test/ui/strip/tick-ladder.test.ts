import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { tickLadder, type TickQuestion } from '@/app/ui/strip/tick-ladder';
import { textWidth } from '@/app/ui/strip/text-width';

const mm = 1e9;
const inch = 25.4e9;

/** 358 px, as on a phone, over so many units. */
const question = (over: number, unit: 'mm' | 'in', resolutionPm: number | null): TickQuestion => ({
  unit,
  resolutionPm,
  pxPerPm: 358 / (over * (unit === 'mm' ? mm : inch)),
  longestPm: 18 * (unit === 'mm' ? mm : inch),
  numeralPx: 13,
});

describe('tickLadder', () => {
  // Worked by hand from the rule of look.md section 6: at least 8 px, 1-2-5, numerals 24 px clear.
  it.each([
    // 0.018 mm on 358 px: 0.001 is 19.9 px; numerals of 46.2 px need 70.2 px, so 0.005 (99.4 px).
    ['a close limit in mm', 0.018, 'mm', 0.001 * mm, 0.001, null, 0.005, 3],
    // 0.12 mm: 0.005 is 14.9 px (0.002 is 6.0); numerals 18.00 of 37.7 px need 61.7, so 0.05 (149 px).
    ['stock to cut', 0.12, 'mm', 0.001 * mm, 0.005, 0.01, 0.05, 2],
    // 0.0012 in: 0.0001 is 29.8 px; numerals 18.0000 of 54.6 px need 78.6, so 0.0005 (149 px).
    ['inches', 0.0012, 'in', 0.0001 * inch, 0.0001, null, 0.0005, 4],
    // A caliper of 0.01 on 0.1 mm: 0.01 is 35.8 px and finer is not known; 61.7 px asks 0.02.
    ['a coarse gauge', 0.1, 'mm', 0.01 * mm, 0.01, null, 0.02, 2],
    // 2 mm: 0.05 is 9.0 px; numerals 18.0 of 29.3 px need 53.3, so 0.5 (89.5 px).
    ['a wide band', 2, 'mm', 0.001 * mm, 0.05, 0.1, 0.5, 1],
  ] as const)('gives the steps of %s', (_, over, unit, resolutionPm, minor, medium, major, dec) => {
    const pm = unit === 'mm' ? mm : inch;
    const ladder = tickLadder(question(over, unit, resolutionPm));
    expect(ladder.minorPm).toBe(Math.round(minor * pm));
    expect(ladder.mediumPm).toBe(medium === null ? null : Math.round(medium * pm));
    expect(ladder.majorPm).toBe(Math.round(major * pm));
    expect(ladder.decimals).toBe(dec);
  });

  it.each(['mm', 'in'] as const)(
    'has steps that are whole pm on a picture of no width, in %s',
    (unit) => {
      for (const pxPerPm of [0, -1e-9, 1e-30]) {
        const { minorPm, majorPm } = tickLadder({ ...question(1, unit, null), pxPerPm });
        expect([minorPm, majorPm].every(Number.isSafeInteger), `${pxPerPm} px a pm`).toBe(true);
      }
    },
  );

  it('shows the decimals of the gauge once the minor tick is its step', () => {
    // 0.01 mm is 35.8 px; the major step 0.02 has two decimals, as has the gauge.
    expect(tickLadder(question(0.1, 'mm', 0.01 * mm)).decimals).toBe(2);
    // On 40 px a step the numeral needs two steps of 5: 0.05 has two decimals, 0.1 one, the gauge two.
    expect(tickLadder({ ...question(0.7, 'mm', 0.05 * mm) }).decimals).toBe(2);
  });

  /** A product of doubles near 100 px may be this far from what it stands for. */
  const lastBitsPx = 1e-9;

  it('never makes a tick finer than the gauge or closer than 8 px, nor numerals closer than 24 px', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -4, max: 2, noNaN: true }),
        fc.integer({ min: 296, max: 1200 }),
        fc.constantFrom('mm' as const, 'in' as const),
        fc.constantFrom(1e6, 2e6, 1e7, 5e7, 2.54e6, 12.7e6, null),
        fc.constantFrom(13, 17),
        (power, widthPx, unit, resolutionPm, numeralPx) => {
          const pmPerUnit = unit === 'mm' ? mm : inch;
          const pxPerPm = widthPx / (10 ** power * pmPerUnit);
          const longestPm = 18 * pmPerUnit;
          const ladder = tickLadder({ unit, resolutionPm, pxPerPm, longestPm, numeralPx });
          expect(ladder.minorPm).toBeGreaterThanOrEqual(resolutionPm ?? 0);
          expect(ladder.minorPm * pxPerPm).toBeGreaterThanOrEqual(8 - lastBitsPx);
          expect(ladder.majorPm % ladder.minorPm).toBe(0);
          if (ladder.mediumPm !== null) expect(ladder.majorPm % ladder.mediumPm).toBe(0);
          // A numeral without decimals has no point.
          const text = ladder.decimals === 0 ? '18' : `18.${'0'.repeat(ladder.decimals)}`;
          const clearPx = ladder.majorPm * pxPerPm - textWidth({ text, sizePx: numeralPx });
          expect(clearPx).toBeGreaterThanOrEqual(24 - lastBitsPx);
        },
      ),
    );
  });

  it('takes the smallest step there is: one step of the ladder less would break a rule', () => {
    // By hand: 100 px a mm. 0.05 is 5 px, too close; 0.1 is 10 px. Numerals 18.0 need 53.3 px: 0.5 is 50, 1 is 100.
    const ladder = tickLadder({
      unit: 'mm',
      resolutionPm: null,
      pxPerPm: 100 / mm,
      longestPm: 18 * mm,
      numeralPx: 13,
    });
    expect([ladder.minorPm, ladder.mediumPm, ladder.majorPm]).toEqual([0.1 * mm, 0.5 * mm, mm]);
  });
});
