import { MathsInputError } from '../check';

/** The limits of a size; a limit left out does not bind. */
export type ToleranceLimits = { lower?: number | undefined; upper?: number | undefined };

/** Requires at least one limit, and the lower one not above the upper one. */
export function requireLimits(caller: string, code: string, { lower, upper }: ToleranceLimits) {
  if (lower === undefined && upper === undefined) {
    throw new MathsInputError(`${code}/limits`, `${caller} requires a limit, got none`);
  }
  if ((lower ?? -Infinity) <= (upper ?? Infinity)) return;
  throw new MathsInputError(
    `${code}/limits`,
    `${caller} requires the lower limit not above the upper one, got ${lower} and ${upper}`,
  );
}

/** Requires a standard uncertainty not below zero. */
export function requireUncertainty(caller: string, code: string, u: number): void {
  if (u >= 0 && u < Infinity) return;
  throw new MathsInputError(
    `${code}/uncertainty`,
    `${caller} requires an uncertainty not below zero, got ${u}`,
  );
}
