import { MathsInputError } from '../check';

/** Refuses anything but a whole number of picometres. `what` is said in the message. */
export function requirePicometres(file: string, caller: string, what: string, pm: number): void {
  if (Number.isSafeInteger(pm)) return;
  throw new MathsInputError(
    `${file}/picometres`,
    `${caller} requires ${what} in whole picometres, got ${pm}`,
  );
}

/** Refuses a size that is not a whole number of picometres above zero. */
export function requireSize(file: string, caller: string, what: string, pm: number): void {
  if (Number.isSafeInteger(pm) && pm > 0) return;
  throw new MathsInputError(
    `${file}/size`,
    `${caller} requires ${what} in whole picometres above zero, got ${pm}`,
  );
}

/** Refuses a standard uncertainty that is not finite or lies below zero. */
export function requireUncertainty(file: string, caller: string, u: number): void {
  if (Number.isFinite(u) && u >= 0) return;
  throw new MathsInputError(
    `${file}/uncertainty`,
    `${caller} requires standard uncertainties from zero up, got ${u}`,
  );
}

/** A fit as clearances in picometres; below zero is interference. */
export type Fit = { minPm: number; aimPm: number; maxPm: number };

/** Refuses a fit that is not whole picometres with min <= aim <= max and min below max. */
export function requireFit(file: string, caller: string, { minPm, aimPm, maxPm }: Fit): void {
  const whole = [minPm, aimPm, maxPm].every(Number.isSafeInteger);
  if (whole && minPm <= aimPm && aimPm <= maxPm && minPm < maxPm) return;
  throw new MathsInputError(
    `${file}/fit`,
    `${caller} requires whole clearances with the aim between the limits, got ${minPm}, ${aimPm} and ${maxPm}`,
  );
}
