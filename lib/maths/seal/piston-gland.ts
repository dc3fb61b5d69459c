import {
  glandFaults,
  requireLengths,
  requireOrder,
  sectionArea,
  type GlandFault,
} from './check-seal';

/** A groove in a piston that runs in a bore, and the O-ring in it; mm, loose ring sizes. */
export type PistonGland = {
  boreMm: number;
  pistonMm: number;
  grooveBottomMm: number;
  grooveWidthMm: number;
  ringInsideMm: number;
  ringSectionMm: number;
};

export type PistonGlandFigures = {
  /** From the groove bottom to the bore, mm. */
  depthMm: number;
  /** From the groove bottom to the piston: what is measured on the piston, mm. */
  grooveDepthMm: number;
  radialGapMm: number;
  squeezePercent: number;
  /** Squeeze on the two sides of a piston that touches the bore on one: least and most. */
  squeezeEccentricPercent: { least: number; most: number };
  stretchPercent: number;
  ringAreaMm2: number;
  glandAreaMm2: number;
  fillPercent: number;
  /** Section of the ring once stretched over the groove bottom, its volume kept, mm. */
  stretchedSectionMm: number;
  squeezeStretchedPercent: number;
  faults: GlandFault[];
};

/**
 * Squeeze, stretch and fill of an O-ring in a piston groove.
 *
 * t = (B - G)/2; squeeze = 1 - t/w; stretch = (G - I)/I; fill = (pi w^2/4)/(t b);
 * eccentric squeeze 1 - (t +- e)/w with e = (B - P)/2; stretched section from
 * w'^2 (G + w') = w^2 (I + w).
 *
 * Squeeze is counted to the bore, not to the piston; percentages of the loose
 * ring. What squeeze and fill are right is for the maker of the ring to say
 * (texts: dynamic 10 to 18 %, static 15 to 25 %, fill 65 to 85 %, stretch 1 to 5 %).
 * A gland that holds pressure or heat needs the maker's data and local codes.
 *
 * Source: [iso-3601-2], definitions of the trade.
 *
 * @throws {MathsInputError} `piston-gland/length`, `piston-gland/order`
 *
 * @example
 * pistonGland(gland).squeezePercent; // 17.8
 */
export function pistonGland(gland: PistonGland): PistonGlandFigures {
  requireLengths('piston-gland', 'pistonGland', gland);
  const { boreMm, pistonMm, grooveBottomMm, grooveWidthMm, ringInsideMm, ringSectionMm } = gland;
  requireOrder(
    'piston-gland',
    'pistonGland',
    'a groove bottom below the piston',
    grooveBottomMm,
    pistonMm,
  );
  requireOrder('piston-gland', 'pistonGland', 'a piston below the bore', pistonMm, boreMm);
  const depthMm = (boreMm - grooveBottomMm) / 2;
  const radialGapMm = (boreMm - pistonMm) / 2;
  const ringAreaMm2 = sectionArea(ringSectionMm);
  const glandAreaMm2 = depthMm * grooveWidthMm;
  const fillPercent = (100 * ringAreaMm2) / glandAreaMm2;
  const stretchedSectionMm = stretchedSection(ringInsideMm, ringSectionMm, grooveBottomMm);
  const squeeze = (depth: number, section: number) => 100 * (1 - depth / section);
  return {
    depthMm,
    grooveDepthMm: (pistonMm - grooveBottomMm) / 2,
    radialGapMm,
    squeezePercent: squeeze(depthMm, ringSectionMm),
    squeezeEccentricPercent: {
      least: squeeze(depthMm + radialGapMm, ringSectionMm),
      most: squeeze(depthMm - radialGapMm, ringSectionMm),
    },
    stretchPercent: (100 * (grooveBottomMm - ringInsideMm)) / ringInsideMm,
    ringAreaMm2,
    glandAreaMm2,
    fillPercent,
    stretchedSectionMm,
    squeezeStretchedPercent: squeeze(depthMm, stretchedSectionMm),
    faults: glandFaults(depthMm, ringSectionMm, fillPercent),
  };
}

/** Root of w'^2 (G + w') = w^2 (I + w) by Newton's method: rising and convex above zero. */
function stretchedSection(insideMm: number, sectionMm: number, overMm: number): number {
  const volume = sectionMm * sectionMm * (insideMm + sectionMm);
  let section = Math.max(sectionMm, Math.cbrt(volume));
  for (let step = 0; step < 60; step += 1) {
    const off = section * section * (overMm + section) - volume;
    const next = section - off / (section * (2 * overMm + 3 * section));
    if (!(next < section)) return section;
    section = next;
  }
  return section;
}
