import { MathsInputError } from '../check';

/** Refuses a length that is not finite and above zero. `caller` is the function's own name. */
export function requireLength(file: string, caller: string, lengthMm: number): void {
  if (Number.isFinite(lengthMm) && lengthMm > 0) return;
  throw new MathsInputError(
    `${file}/length`,
    `${caller} requires lengths above zero, got ${lengthMm}`,
  );
}

/** Refuses a temperature that is not finite or lies below absolute zero. */
export function requireTemperature(file: string, caller: string, temperatureC: number): void {
  if (Number.isFinite(temperatureC) && temperatureC >= -273.15) return;
  throw new MathsInputError(
    `${file}/temperature`,
    `${caller} requires temperatures from -273.15 degrees C, got ${temperatureC}`,
  );
}

/** Refuses a coefficient of expansion outside -0.001 to 0.001 per degree: a wrong power of ten. */
export function requireExpansion(file: string, caller: string, perC: number): void {
  if (Math.abs(perC) <= 1e-3) return;
  throw new MathsInputError(
    `${file}/expansion`,
    `${caller} requires expansion of at most 0.001 per degree C, got ${perC}`,
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
