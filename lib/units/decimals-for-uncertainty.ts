import { pmPerUnit, type LengthUnit } from './picometres';

/** How many significant figures of an uncertainty are worth showing: JCGM 100 7.2.6 allows two. */
export type UncertaintyFigures = 1 | 2;

/**
 * Digits after the mark that an uncertainty allows in a unit: its last significant figure.
 *
 * JCGM 100:2008 7.2.6: at most two figures of the uncertainty, and the value to the same place. An
 * uncertainty that rounds up to the next power of ten takes one digit fewer (0.0097 mm to one figure
 * is 0.01 mm). Never below 0 and never more than 9.
 *
 * @throws {RangeError} when `uncertaintyPm` is not finite and above zero
 */
export function decimalsForUncertainty(
  uncertaintyPm: number,
  unit: LengthUnit,
  figures: UncertaintyFigures = 1,
): number {
  if (!(uncertaintyPm > 0) || !Number.isFinite(uncertaintyPm)) {
    throw new RangeError(
      `decimalsForUncertainty requires an uncertainty above zero, got ${uncertaintyPm}`,
    );
  }
  const shown = (uncertaintyPm / pmPerUnit(unit)).toExponential(figures - 1);
  const power = Number(shown.split('e')[1]);
  return Math.min(9, Math.max(0, figures - 1 - power));
}
