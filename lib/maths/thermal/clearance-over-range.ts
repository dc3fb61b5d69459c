import { MathsInputError } from '../check';
import { clearanceAtTemperatures, type MatingPiece } from './clearance-at-temperatures';

export type ClearanceOverRange = {
  /** In the order of the temperatures asked, mm. */
  clearancesMm: number[];
  smallestMm: number;
  /** Temperature of the smallest, the first one where several are equal. */
  smallestAtC: number;
};

/**
 * Clearance of a bore and a shaft at a list of temperatures that both share.
 *
 * Each piece with its own material. The clearance is a straight line over
 * temperature, so the smallest of a range is at one of its ends. For pieces at
 * different temperatures see tightestMoment. Source: [iso-1].
 *
 * @throws {MathsInputError} `clearance-over-range/no-temperature`, `size-at-temperature/...`
 *
 * @example
 * clearanceOverRange({ bore, shaft, temperaturesC: [-20, 20, 150] }).smallestAtC; // -20
 */
export function clearanceOverRange(pair: {
  bore: MatingPiece;
  shaft: MatingPiece;
  temperaturesC: readonly number[];
}): ClearanceOverRange {
  const { bore, shaft, temperaturesC } = pair;
  if (temperaturesC.length === 0) {
    throw new MathsInputError(
      'clearance-over-range/no-temperature',
      'clearanceOverRange requires at least one temperature, got none',
    );
  }
  const clearancesMm = temperaturesC.map(
    (both) => clearanceAtTemperatures({ bore, boreC: both, shaft, shaftC: both }).clearanceMm,
  );
  const smallestMm = Math.min(...clearancesMm);
  return {
    clearancesMm,
    smallestMm,
    smallestAtC: temperaturesC[clearancesMm.indexOf(smallestMm)]!,
  };
}
