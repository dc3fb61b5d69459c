import { sizeAtTemperature } from './size-at-temperature';

/** One of two mating pieces: its size at 20 degrees C and its own material. */
export type MatingPiece = { size20Mm: number; expansionPerC: number };

export type HotClearance = {
  boreMm: number;
  shaftMm: number;
  /** Below zero is interference, mm. */
  clearanceMm: number;
};

/**
 * Clearance of a bore and a shaft, each with its own material and temperature.
 *
 * c = B (1 + aB (TB - 20)) - S (1 + aS (TS - 20)), never one mean coefficient
 * for both. Lengths in mm, coefficients per degree C.
 *
 * Limits: free expansion; an interference found here does not say how hard the
 * pieces press. A hot figure is an estimate. Source: [iso-1].
 *
 * @throws {MathsInputError} `size-at-temperature/...`
 *
 * @example
 * // Inner piece hot, outer still cold: 0.045 mm at 20 degrees C is nearly gone.
 * clearanceAtTemperatures({
 *   bore: { size20Mm: 60, expansionPerC: 11.5e-6 }, boreC: 20,
 *   shaft: { size20Mm: 59.955, expansionPerC: 11.5e-6 }, shaftC: 85,
 * }).clearanceMm; // 0.00018
 */
export function clearanceAtTemperatures(pair: {
  bore: MatingPiece;
  boreC: number;
  shaft: MatingPiece;
  shaftC: number;
}): HotClearance {
  const boreMm = sizeAtTemperature({ ...pair.bore, temperatureC: pair.boreC });
  const shaftMm = sizeAtTemperature({ ...pair.shaft, temperatureC: pair.shaftC });
  return { boreMm, shaftMm, clearanceMm: boreMm - shaftMm };
}
