import { MathsInputError } from '../check';
import { clearanceAtTemperatures, type MatingPiece } from './clearance-at-temperatures';

/** Lowest and highest temperature a piece may have, degrees C. */
export type TemperatureRange = { lowestC: number; highestC: number };

export type TightestMoment = { clearanceMm: number; boreC: number; shaftC: number };

/**
 * The tightest moment of a bore and a shaft whose temperatures range apart: the
 * inner piece hot while the outer is still cold, or a light-metal housing in frost.
 *
 * Each piece anywhere in its own range, whatever the other does, so this is the
 * worst that can be, not what will be. The clearance is linear in both
 * temperatures, so its least value stands at a corner. Source: [iso-1].
 *
 * @throws {MathsInputError} `tightest-moment/range`, `size-at-temperature/...`
 *
 * @example
 * tightestMoment({
 *   bore, boreRange: { lowestC: 5, highestC: 90 },
 *   shaft, shaftRange: { lowestC: 5, highestC: 140 },
 * }); // boreC 5, shaftC 140
 */
export function tightestMoment(pair: {
  bore: MatingPiece;
  boreRange: TemperatureRange;
  shaft: MatingPiece;
  shaftRange: TemperatureRange;
}): TightestMoment {
  const { bore, boreRange, shaft, shaftRange } = pair;
  for (const { lowestC, highestC } of [boreRange, shaftRange]) {
    if (lowestC <= highestC) continue;
    throw new MathsInputError(
      'tightest-moment/range',
      `tightestMoment requires a lowest temperature up to the highest, got ${lowestC} and ${highestC}`,
    );
  }
  const boreC = bore.expansionPerC >= 0 ? boreRange.lowestC : boreRange.highestC;
  const shaftC = shaft.expansionPerC >= 0 ? shaftRange.highestC : shaftRange.lowestC;
  const { clearanceMm } = clearanceAtTemperatures({ bore, boreC, shaft, shaftC });
  return { clearanceMm, boreC, shaftC };
}
