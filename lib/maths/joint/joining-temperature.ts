import { MathsInputError } from '../check';

/**
 * Temperature to which a hub is heated so that a shaft goes in with a gap,
 * taken on the seat diameter: d alpha dT = interference + gap.
 *
 * The short form of the workshop: heatOnePiece in the thermal folder keeps the
 * two diameters apart and differs by the interference as a part of the diameter.
 * Lengths in mm, alpha per degree C, temperatures in degrees C.
 *
 * Heat hurts: gloves, no flame near oil, and the maker's limit of temperature
 * for the material; follow local codes and licensed practice.
 * Source: [shigley-9]; the working gap is common practice, no source.
 *
 * @throws {MathsInputError} `joining-temperature/input`
 *
 * @example
 * joiningTemperature({ seatMm: 50, interferenceMm: 0.045, gapMm: 0.05, expansionPerC: 11.5e-6, roomC: 20 });
 * // 185.217
 */
export function joiningTemperature(joint: {
  seatMm: number;
  interferenceMm: number;
  gapMm: number;
  expansionPerC: number;
  roomC: number;
}): number {
  const { seatMm, interferenceMm, gapMm, expansionPerC, roomC } = joint;
  const finite = [interferenceMm, gapMm, roomC].every(Number.isFinite);
  const solid = seatMm > 0 && seatMm < Infinity && expansionPerC > 0 && expansionPerC <= 1e-3;
  if (!finite || !solid || gapMm < 0 || interferenceMm < 0) {
    throw new MathsInputError(
      'joining-temperature/input',
      `joiningTemperature requires a seat and an expansion above zero, interference and gap from zero up, got ${seatMm}, ${expansionPerC}, ${interferenceMm} and ${gapMm}`,
    );
  }
  return roomC + (interferenceMm + gapMm) / (expansionPerC * seatMm);
}
