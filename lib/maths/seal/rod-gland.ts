import {
  glandFaults,
  requireLengths,
  requireOrder,
  sectionArea,
  type GlandFault,
} from './check-seal';

/** A groove in a housing that a rod runs through, and the O-ring in it; mm, loose ring sizes. */
export type RodGland = {
  rodMm: number;
  /** Bore of the housing beside the groove. */
  glandBoreMm: number;
  grooveBottomMm: number;
  grooveWidthMm: number;
  ringInsideMm: number;
  ringSectionMm: number;
};

export type RodGlandFigures = {
  depthMm: number;
  radialGapMm: number;
  squeezePercent: number;
  stretchOnRodPercent: number;
  /** How much the groove bottom is smaller than the outside of the loose ring. */
  outsideCompressionPercent: number;
  fillPercent: number;
  faults: GlandFault[];
};

/**
 * Squeeze, stretch and fill of an O-ring in a rod groove.
 *
 * t = (G - R)/2; squeeze = 1 - t/w; stretch = (R - I)/I;
 * outside compression = (I + 2w - G)/(I + 2w); fill = (pi w^2/4)/(t b).
 *
 * As for pistonGland: the right figures are the maker's, and a gland that holds
 * pressure or heat needs the maker's data and local codes.
 *
 * Source: [iso-3601-2], definitions of the trade.
 *
 * @throws {MathsInputError} `rod-gland/length`, `rod-gland/order`
 *
 * @example
 * rodGland(gland).squeezePercent; // 12.2
 */
export function rodGland(gland: RodGland): RodGlandFigures {
  requireLengths('rod-gland', 'rodGland', gland);
  const { rodMm, glandBoreMm, grooveBottomMm, grooveWidthMm, ringInsideMm, ringSectionMm } = gland;
  requireOrder('rod-gland', 'rodGland', 'a rod below the gland bore', rodMm, glandBoreMm);
  requireOrder(
    'rod-gland',
    'rodGland',
    'a gland bore below the groove bottom',
    glandBoreMm,
    grooveBottomMm,
  );
  const depthMm = (grooveBottomMm - rodMm) / 2;
  const ringOutsideMm = ringInsideMm + 2 * ringSectionMm;
  const fillPercent = (100 * sectionArea(ringSectionMm)) / (depthMm * grooveWidthMm);
  return {
    depthMm,
    radialGapMm: (glandBoreMm - rodMm) / 2,
    squeezePercent: 100 * (1 - depthMm / ringSectionMm),
    stretchOnRodPercent: (100 * (rodMm - ringInsideMm)) / ringInsideMm,
    outsideCompressionPercent: (100 * (ringOutsideMm - grooveBottomMm)) / ringOutsideMm,
    fillPercent,
    faults: glandFaults(depthMm, ringSectionMm, fillPercent),
  };
}
