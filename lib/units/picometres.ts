/** Picometres in a millimetre. */
export const pmPerMm = 1_000_000_000;

/** Picometres in an inch: exactly 25.4 mm since the agreement of 1959. */
export const pmPerIn = 25_400_000_000;

/** Picometres in a thousandth of an inch. */
export const pmPerThou = 25_400_000;

/** The unit a length is shown and typed in. */
export type LengthUnit = 'mm' | 'in';

/** The mark a person puts between the whole number and the decimals. */
export type DecimalMark = '.' | ',';

/** Picometres in one of a unit. */
export function pmPerUnit(unit: LengthUnit): number {
  return unit === 'mm' ? pmPerMm : pmPerIn;
}

/** Millimetres as a double: for statistics and drawing, never for keeping. */
export function mmFromPm(pm: number): number {
  return pm / pmPerMm;
}

/**
 * Millimetres as the nearest whole number of picometres, halves away from zero.
 *
 * A double of millimetres is within half a picometre of what was meant up to about four metres;
 * a computed size may be kept this way, a typed one goes through `parseLength`.
 */
export function pmFromMm(mm: number): number {
  const pm = Math.sign(mm) * Math.round(Math.abs(mm) * pmPerMm);
  return pm === 0 ? 0 : pm;
}
