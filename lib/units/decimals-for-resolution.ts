import { pmPerUnit, type LengthUnit } from './picometres';

/**
 * Digits after the mark that a resolution fills in a unit: the fewest whose last place is no coarser.
 *
 * 0.01 mm takes 2 in mm; 0.005 mm takes 3; 0.01 mm is 0.00039 in and takes 4 in inches. Never more
 * than 9.
 *
 * @throws {RangeError} when `resolutionPm` is not finite and above zero
 */
export function decimalsForResolution(resolutionPm: number, unit: LengthUnit): number {
  if (!(resolutionPm > 0) || !Number.isFinite(resolutionPm)) {
    throw new RangeError(
      `decimalsForResolution requires a resolution above zero, got ${resolutionPm}`,
    );
  }
  let decimals = 0;
  while (decimals < 9 && pmPerUnit(unit) > resolutionPm * 10 ** decimals) decimals += 1;
  return decimals;
}
