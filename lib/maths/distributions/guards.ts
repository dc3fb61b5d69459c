import { MathsInputError } from '../check';

/** Requires a chance strictly between 0 and 1; the quantiles at the ends are not finite. */
export function requireChance(caller: string, code: string, p: number): void {
  if (!(p > 0 && p < 1)) {
    throw new MathsInputError(
      `${code}/chance`,
      `${caller} requires a chance above 0 and below 1, got ${p}`,
    );
  }
}

/** Requires degrees of freedom above zero; infinity is the normal limit where `mayBeInfinite`. */
export function requireDegrees(
  caller: string,
  code: string,
  degrees: number,
  mayBeInfinite = false,
): void {
  if (!(degrees > 0) || (!mayBeInfinite && degrees === Infinity)) {
    throw new MathsInputError(
      `${code}/degrees`,
      `${caller} requires degrees of freedom above zero, got ${degrees}`,
    );
  }
}

/** Requires a number to be one; infinity is allowed, as a place on the line. */
export function requirePlace(caller: string, code: string, x: number): void {
  if (Number.isNaN(x)) {
    throw new MathsInputError(`${code}/place`, `${caller} requires a number, got NaN`);
  }
}
