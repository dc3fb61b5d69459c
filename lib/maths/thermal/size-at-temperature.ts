import { requireExpansion, requireLength, requireTemperature } from './check-thermal';

/**
 * Size of a piece at a temperature, from its size at 20 degrees C.
 *
 * L(T) = L20 (1 + alpha (T - 20)), alpha the mean coefficient from 20 degrees C
 * to T, per degree C. Lengths in mm.
 *
 * Limits: free expansion of one material at one temperature. Source: [iso-1].
 *
 * @throws {MathsInputError} `size-at-temperature/length`, `.../expansion`, `.../temperature`
 *
 * @example
 * sizeAtTemperature({ size20Mm: 100, expansionPerC: 11.5e-6, temperatureC: 80 }); // 100.069
 */
export function sizeAtTemperature(piece: {
  size20Mm: number;
  expansionPerC: number;
  temperatureC: number;
}): number {
  requireLength('size-at-temperature', 'sizeAtTemperature', piece.size20Mm);
  requireExpansion('size-at-temperature', 'sizeAtTemperature', piece.expansionPerC);
  requireTemperature('size-at-temperature', 'sizeAtTemperature', piece.temperatureC);
  return piece.size20Mm + piece.size20Mm * piece.expansionPerC * (piece.temperatureC - 20);
}
