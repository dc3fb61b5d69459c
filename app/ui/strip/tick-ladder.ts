import { pmPerUnit, type LengthUnit } from '@/lib/units/picometres';
import { textWidth } from './text-width';

export type TickLadder = {
  /** Every tick is a whole multiple of this, pm. */
  minorPm: number;
  /** Null where a medium tick would not fall between the major ones. */
  mediumPm: number | null;
  /** The ticks that carry a numeral. */
  majorPm: number;
  /** Decimals of the numerals. */
  decimals: number;
};

export type TickQuestion = {
  unit: LengthUnit;
  resolutionPm: number | null;
  pxPerPm: number;
  /** The length with the longest numeral, pm. */
  longestPm: number;
  numeralPx: number;
  /** Least clear space between numerals, px; 24 where it is not said. */
  numeralGapPx?: number;
};

const minorLeastPx = 8;
const usualNumeralGapPx = 24;

/**
 * The steps of a scale: 1, 2 or 5 times a power of ten of the shown unit.
 *
 * Minor: the smallest at least 8 px apart and not finer than the gauge. Medium: five minors (two when the
 * minor is a 5). Major: the smallest whose numerals stand 24 px clear of each other and which falls on minors.
 * Numerals have the decimals of the major step, and at least the gauge's when the minor is its resolution.
 */
export function tickLadder(question: TickQuestion): TickLadder {
  const { unit, resolutionPm, pxPerPm, numeralGapPx = usualNumeralGapPx } = question;
  const ladder = steps(unit);
  const minor =
    ladder.find(({ pm }) => pm * pxPerPm >= minorLeastPx && pm >= (resolutionPm ?? 0)) ??
    ladder.at(-1)!;
  const leastDecimals = resolutionPm !== null && minor.pm === resolutionPm ? minor.decimals : 0;
  const major =
    ladder.find((step) => {
      const decimals = Math.max(step.decimals, leastDecimals);
      const apartPx = step.pm * pxPerPm - numeralWidth(question, decimals);
      return step.pm % minor.pm === 0 && apartPx >= numeralGapPx;
    }) ?? ladder.at(-1)!;
  const mediumPm = minor.pm * (minor.mantissa === 5 ? 2 : 5);
  return {
    minorPm: minor.pm,
    mediumPm: mediumPm < major.pm && major.pm % mediumPm === 0 ? mediumPm : null,
    majorPm: major.pm,
    decimals: Math.max(major.decimals, leastDecimals),
  };
}

type Step = { pm: number; mantissa: 1 | 2 | 5; decimals: number };

/**
 * 127 pm (5e-9 in) is the finest step that is a whole number of pm in inches; the coarsest are 5 km and
 * 50 000 in, which a double still counts in whole pm.
 */
function steps(unit: LengthUnit): Step[] {
  const all: Step[] = [];
  for (let power = unit === 'mm' ? -9 : -8; power <= (unit === 'mm' ? 6 : 4); power += 1) {
    for (const mantissa of [1, 2, 5] as const) {
      const tens = 10 ** Math.abs(power);
      const pm = mantissa * (power < 0 ? pmPerUnit(unit) / tens : pmPerUnit(unit) * tens);
      all.push({ pm, mantissa, decimals: Math.max(0, -power) });
    }
  }
  return all;
}

function numeralWidth({ unit, longestPm, numeralPx }: TickQuestion, decimals: number): number {
  const whole = Math.floor(Math.abs(longestPm) / pmPerUnit(unit));
  const sign = longestPm < 0 ? '\u2212' : '';
  const text = `${sign}${whole}${decimals > 0 ? `.${'0'.repeat(decimals)}` : ''}`;
  return textWidth({ text, sizePx: numeralPx });
}
