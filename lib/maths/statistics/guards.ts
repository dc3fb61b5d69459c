import { MathsInputError } from '../check';

/** Requires at least `least` values, all finite; names the first that is not. */
export function requireValues(
  caller: string,
  code: string,
  values: ArrayLike<number>,
  least: number,
): void {
  requireCount(caller, code, values.length, least);
  for (let i = 0; i < values.length; i += 1) {
    if (Number.isFinite(values[i])) continue;
    throw new MathsInputError(
      `${code}/value`,
      `${caller} requires finite values, got ${values[i]} at index ${i}`,
    );
  }
}

/** Explains why a sum came out as no number: too few values, one that is none, or too large ones. */
export function refuseSum(caller: string, code: string, values: ArrayLike<number>): never {
  requireValues(caller, code, values, 1);
  throw new MathsInputError(
    `${code}/value`,
    `${caller} requires values whose sum is below 1.8e308, got a larger one`,
  );
}

/** Requires a number of values. */
export function requireCount(caller: string, code: string, n: number, least: number): void {
  if (n >= least) return;
  const needed = least === 1 ? 'one value' : `${least} values`;
  throw new MathsInputError(`${code}/too-few`, `${caller} requires at least ${needed}, got ${n}`);
}

/** Requires that not all values are the same, where a spread is divided by. */
export function requireSpread(caller: string, code: string, squares: number): void {
  if (squares > 0) return;
  throw new MathsInputError(
    `${code}/no-spread`,
    `${caller} requires values that differ, got all the same`,
  );
}

/** Requires a chance, confidence or significance strictly between 0 and 1. */
export function requirePart(caller: string, code: string, name: string, part: number): void {
  if (part > 0 && part < 1) return;
  throw new MathsInputError(
    `${code}/${name}`,
    `${caller} requires a ${name} above 0 and below 1, got ${part}`,
  );
}
