/** A non-negative number as typed: all its digits in a row, and how many stand after the mark. */
export type TypedDecimal = { digits: string; decimals: number };

/**
 * The whole number of picometres of `value` times a unit, or null where it is none.
 *
 * Exact: nothing is rounded. Up to 15 digits the product of whole numbers below 2^53 is done on
 * doubles, which is exact; beyond, or when the unit does not divide, on big integers.
 */
export function exactPmOfDecimal(value: TypedDecimal, unitPm: number): number | null {
  const step = unitPm / (powersOfTen[value.decimals] ?? Infinity);
  if (value.digits.length <= 15 && Number.isInteger(step)) {
    const pm = Number(value.digits) * step;
    if (pm <= Number.MAX_SAFE_INTEGER) return pm;
  }
  return exactQuotient(BigInt(value.digits) * BigInt(unitPm), 10n ** BigInt(value.decimals));
}

/** The whole number of picometres of `whole + numerator/denominator` of a unit, or null. */
export function exactPmOfFraction(
  whole: string,
  numerator: string,
  denominator: string,
  unitPm: number,
): number | null {
  const below = BigInt(denominator);
  return exactQuotient((BigInt(whole) * below + BigInt(numerator)) * BigInt(unitPm), below);
}

/** One unit of the last digit typed, in whole picometres; at least one. */
export function resolutionPmOf(decimals: number, unitPm: number): number {
  return Math.max(1, Math.ceil(unitPm / (powersOfTen[decimals] ?? Infinity)));
}

const powersOfTen = Array.from({ length: 20 }, (_, power) => Number(`1e${power}`));

function exactQuotient(above: bigint, below: bigint): number | null {
  return above % below === 0n ? Number(above / below) : null;
}
