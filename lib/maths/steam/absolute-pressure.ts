import { MathsInputError } from '../check';

/** Megapascals in one unit of a pressure gauge; the psi from the exact pound and inch. */
const unitsMPa = { bar: 0.1, psi: 0.006894757293168, kPa: 0.001, MPa: 1 } as const;

/** Unit that a pressure gauge is marked in. */
export type PressureUnit = keyof typeof unitsMPa;

/**
 * Absolute pressure, MPa, from what a gauge shows above the atmosphere.
 *
 * absolute = gauge + atmosphere. The atmosphere is asked for, kPa: 101.325 is
 * the standard one, and a high workshop has less. A gauge below zero shows a
 * vacuum. Source: definition; [nist-sp-811] for the psi.
 *
 * @throws {MathsInputError} `absolute-pressure/pressure` when the result is not above zero
 *
 * @example
 * absolutePressure(7, 'bar', 101.325); // 0.801325
 */
export function absolutePressure(gauge: number, unit: PressureUnit, atmosphereKPa: number): number {
  const absolute = gauge * unitsMPa[unit] + atmosphereKPa / 1000;
  if (absolute > 0 && absolute < Infinity && atmosphereKPa >= 0) return absolute;
  throw new MathsInputError(
    'absolute-pressure/pressure',
    `absolutePressure requires a pressure above a vacuum, got ${gauge} ${unit} over ${atmosphereKPa} kPa`,
  );
}
