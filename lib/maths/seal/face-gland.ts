import { glandFaults, requireLengths, sectionArea, type GlandFault } from './check-seal';

export type FaceGlandFigures = {
  squeezePercent: number;
  /** Over the half tolerances of depth and section. */
  squeezeRangePercent: { least: number; most: number };
  fillPercent: number;
  faults: GlandFault[];
};

/**
 * Squeeze and fill of an O-ring in a groove in a flat face.
 *
 * squeeze = 1 - t/w, least with the deepest groove and the thinnest ring;
 * fill = (pi w^2/4)/(t b). Lengths in mm, half tolerances 0 where left out.
 *
 * As for pistonGland: the right figures are the maker's, and a gland that holds
 * pressure or heat needs the maker's data and local codes.
 *
 * Source: [iso-3601-2], definitions of the trade.
 *
 * @throws {MathsInputError} `face-gland/length`
 *
 * @example
 * faceGland({ depthMm: 2.7, grooveWidthMm: 4.8, ringSectionMm: 3.53 }).squeezePercent; // 23.5
 */
export function faceGland(gland: {
  depthMm: number;
  grooveWidthMm: number;
  ringSectionMm: number;
  depthHalfToleranceMm?: number;
  sectionHalfToleranceMm?: number;
}): FaceGlandFigures {
  const { depthMm, grooveWidthMm, ringSectionMm } = gland;
  const { depthHalfToleranceMm = 0, sectionHalfToleranceMm = 0 } = gland;
  requireLengths('face-gland', 'faceGland', {
    depthMm,
    grooveWidthMm,
    ringSectionMm,
    'the shallowest depth': depthMm - Math.abs(depthHalfToleranceMm),
    'the thinnest section': ringSectionMm - Math.abs(sectionHalfToleranceMm),
  });
  const squeeze = (way: number) =>
    100 *
    (1 - (depthMm - way * depthHalfToleranceMm) / (ringSectionMm + way * sectionHalfToleranceMm));
  const fillPercent = (100 * sectionArea(ringSectionMm)) / (depthMm * grooveWidthMm);
  return {
    squeezePercent: squeeze(0),
    squeezeRangePercent: { least: squeeze(-1), most: squeeze(1) },
    fillPercent,
    faults: glandFaults(depthMm, ringSectionMm, fillPercent),
  };
}
