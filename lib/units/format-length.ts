import { pmPerThou, pmPerUnit, type DecimalMark, type LengthUnit } from './picometres';

/** A unit a length may be shown in. */
export type ShownUnit = LengthUnit | 'um' | 'thou';

export type LengthFormat = {
  unit: ShownUnit;
  /** Digits after the mark, 0 to 12. */
  decimals: number;
  /** The person's decimal mark; a point when left out. */
  decimal?: DecimalMark;
  /** `always` puts a plus before what is above zero; `needed`, the default, only a minus. */
  sign?: 'needed' | 'always';
};

/**
 * A length in a unit, without the name of the unit.
 *
 * The exact quotient is rounded half to even at the last digit shown; nothing passes through a
 * double. The minus is U+2212; what rounds to nothing has no sign.
 *
 * @throws {RangeError} when `pm` is no safe whole number or `decimals` is not 0 to 12
 *
 * @example
 * formatLength(24_987_000_000, { unit: 'mm', decimals: 3 }); // '24.987'
 * formatLength(-13_000_000, { unit: 'thou', decimals: 1 }); // '\u22120.5'
 */
export function formatLength(pm: number, format: LengthFormat): string {
  const { unit, decimals, decimal = '.', sign = 'needed' } = format;
  if (!Number.isSafeInteger(pm)) {
    throw new RangeError(`formatLength requires a whole number of picometres, got ${pm}`);
  }
  if (!Number.isInteger(decimals) || decimals < 0 || decimals > 12) {
    throw new RangeError(`formatLength requires 0 to 12 decimals, got ${decimals}`);
  }
  const digits = roundedQuotient(Math.abs(pm), decimals, pmPerShown(unit));
  const padded = digits.padStart(decimals + 1, '0');
  const whole = padded.slice(0, padded.length - decimals);
  const text = decimals === 0 ? whole : whole + decimal + padded.slice(padded.length - decimals);
  if (/^0*$/.test(digits)) return text;
  if (pm < 0) return `\u2212${text}`;
  return sign === 'always' ? `+${text}` : text;
}

function pmPerShown(unit: ShownUnit): number {
  if (unit === 'um') return 1_000_000;
  return unit === 'thou' ? pmPerThou : pmPerUnit(unit);
}

/** The whole number nearest to pm x 10^decimals / unitPm, halves to even, as digits. */
function roundedQuotient(pm: number, decimals: number, unitPm: number): string {
  const step = unitPm / 10 ** decimals;
  if (Number.isInteger(step)) {
    const over = pm % step;
    const quotient = (pm - over) / step;
    const isUp = 2 * over > step || (2 * over === step && quotient % 2 === 1);
    return String(isUp ? quotient + 1 : quotient);
  }
  const above = BigInt(pm) * 10n ** BigInt(decimals);
  const below = BigInt(unitPm);
  const quotient = above / below;
  const twice = 2n * (above % below);
  const isUp = twice > below || (twice === below && quotient % 2n === 1n);
  return String(isUp ? quotient + 1n : quotient);
}
