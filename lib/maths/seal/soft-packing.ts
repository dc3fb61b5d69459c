import { MathsInputError } from '../check';
import { requireLengths, requireOrder } from './check-seal';

/**
 * Rings of soft packing in a stuffing box.
 *
 * section = (box - rod)/2; a ring is cut to pi (rod + section), the mean round;
 * a stack of n is n sections high and n section (1 - compression) once the gland
 * is pulled up. `gland entry left` is what the box has above the loose stack;
 * below zero the rings do not go in. Lengths in mm.
 *
 * Steam and pressure hurt: pack only a box that is cold and empty, and follow
 * local codes and the maker's data. Source: common practice, no source.
 *
 * @throws {MathsInputError} `soft-packing/length`, `soft-packing/order`,
 *   `soft-packing/rings`, `soft-packing/compression`
 *
 * @example
 * softPacking({ rodMm: 16, boxBoreMm: 28, boxDepthMm: 36, rings: 5, compressionPercent: 15 });
 * // sectionMm 6, cutLengthMm 69.1, stackMm 30, glandEntryLeftMm 6
 */
export function softPacking(box: {
  rodMm: number;
  boxBoreMm: number;
  boxDepthMm: number;
  rings: number;
  compressionPercent: number;
}): {
  sectionMm: number;
  cutLengthMm: number;
  stackMm: number;
  stackCompressedMm: number;
  glandEntryLeftMm: number;
} {
  const { rodMm, boxBoreMm, boxDepthMm, rings, compressionPercent } = box;
  requireLengths('soft-packing', 'softPacking', { rodMm, boxBoreMm, boxDepthMm });
  requireOrder('soft-packing', 'softPacking', 'a rod below the box bore', rodMm, boxBoreMm);
  if (!Number.isInteger(rings) || rings < 1) {
    throw new MathsInputError(
      'soft-packing/rings',
      `softPacking requires a whole number of rings from 1, got ${rings}`,
    );
  }
  if (!(compressionPercent >= 0 && compressionPercent < 100)) {
    throw new MathsInputError(
      'soft-packing/compression',
      `softPacking requires a compression from 0 to below 100 %, got ${compressionPercent}`,
    );
  }
  const sectionMm = (boxBoreMm - rodMm) / 2;
  const stackMm = rings * sectionMm;
  return {
    sectionMm,
    cutLengthMm: Math.PI * (rodMm + sectionMm),
    stackMm,
    stackCompressedMm: stackMm * (1 - compressionPercent / 100),
    glandEntryLeftMm: boxDepthMm - stackMm,
  };
}
