import { MathsInputError } from '../check';

/*
 * Guards shared by the functions of lib/maths/control and lib/maths/gauge. Each is given the name of
 * its caller, so that the code reads `<file of the caller>/<reason>` and the message names the caller.
 */

/** @throws {MathsInputError} `<caller>/not-finite` when any value is NaN or infinite */
export function requireFinite(caller: string, what: string, values: readonly number[]): void {
  for (let i = 0; i < values.length; i += 1) {
    if (!Number.isFinite(values[i])) {
      throw refuse(caller, 'not-finite', `finite ${what}, got ${values[i]} at index ${i}`);
    }
  }
}

/** @throws {MathsInputError} `<caller>/too-few` when there are fewer than `least` values */
export function requireAtLeast(caller: string, what: string, count: number, least: number): void {
  if (!(count >= least)) {
    throw refuse(caller, 'too-few', `at least ${least} ${what}, got ${count}`);
  }
}

/** @throws {MathsInputError} `<caller>/not-positive` when the value is not finite and above zero */
export function requirePositive(caller: string, what: string, value: number): void {
  if (!(Number.isFinite(value) && value > 0)) {
    throw refuse(caller, 'not-positive', `${what} above zero, got ${value}`);
  }
}

/** @throws {MathsInputError} `<caller>/negative` when the value is not finite or is below zero */
export function requireNotNegative(caller: string, what: string, value: number): void {
  if (!(Number.isFinite(value) && value >= 0)) {
    throw refuse(caller, 'negative', `${what} of zero or more, got ${value}`);
  }
}

/** @throws {MathsInputError} `<caller>/confidence` when not strictly between 0 and 1 */
export function requireConfidence(caller: string, confidence: number): void {
  if (!(confidence > 0 && confidence < 1)) {
    throw refuse(caller, 'confidence', `a confidence between 0 and 1, got ${confidence}`);
  }
}

/** @throws {MathsInputError} `<caller>/not-whole` when not a whole number in [least, most] */
export function requireWhole(
  caller: string,
  what: string,
  value: number,
  least: number,
  most: number,
): void {
  if (!(Number.isSafeInteger(value) && value >= least && value <= most)) {
    const from = least === -Infinity ? '' : ` of ${least} or more`;
    const range = most === Infinity ? from : ` from ${least} to ${most}`;
    throw refuse(caller, 'not-whole', `a whole ${what}${range}, got ${value}`);
  }
}

/** @throws {MathsInputError} `<caller>/limits` when a limit is not finite or they do not enclose */
export function requireLimits(caller: string, lower: number, upper: number): void {
  if (!(Number.isFinite(lower) && Number.isFinite(upper) && lower < upper)) {
    throw refuse(caller, 'limits', `a lower limit below the upper, got ${lower} and ${upper}`);
  }
}

/** @throws {MathsInputError} `<caller>/events` when an event stands at no value of the series */
export function requireEvents(
  caller: string,
  eventsBefore: readonly number[],
  count: number,
): void {
  for (const index of eventsBefore) {
    if (!(Number.isSafeInteger(index) && index >= 0 && index < count)) {
      const range = `whole indices from 0 to ${count - 1}`;
      throw refuse(caller, 'events', `events at ${range}, got ${index}`);
    }
  }
}

/** The error for a broken requirement: `driftSinceEvent requires <what>`, under `drift-since-event/<reason>`. */
export function refuse(caller: string, reason: string, what: string): MathsInputError {
  const file = caller.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
  return new MathsInputError(`${file}/${reason}`, `${caller} requires ${what}`);
}
