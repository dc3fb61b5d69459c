import { MathsInputError } from '../check';
import { requireLengths, sectionArea } from './check-seal';

/**
 * Groove of a piston for a wanted squeeze and fill.
 *
 * t = w (1 - squeeze); G = B - 2t; b = (pi w^2/4)/(t fill); stretch = (G - I)/I.
 * Lengths in mm, squeeze and fill in percent. The wanted figures are the maker's.
 *
 * Source: [iso-3601-2], definitions of the trade.
 *
 * @throws {MathsInputError} `design-piston-gland/length`, `design-piston-gland/wanted`
 *
 * @example
 * designPistonGland({ boreMm: 45.03, ringInsideMm: 37.47, ringSectionMm: 3.53, squeezePercent: 14, fillPercent: 75 });
 * // grooveBottomMm 38.9584, grooveWidthMm 4.298
 */
export function designPistonGland(wanted: {
  boreMm: number;
  ringInsideMm: number;
  ringSectionMm: number;
  squeezePercent: number;
  fillPercent: number;
}): {
  depthMm: number;
  grooveBottomMm: number;
  grooveWidthMm: number;
  stretchPercent: number;
} {
  const { boreMm, ringInsideMm, ringSectionMm, squeezePercent, fillPercent } = wanted;
  requireLengths('design-piston-gland', 'designPistonGland', {
    boreMm,
    ringInsideMm,
    ringSectionMm,
  });
  const possible = squeezePercent >= 0 && squeezePercent < 100;
  if (!possible || !(fillPercent > 0 && fillPercent <= 100)) {
    throw new MathsInputError(
      'design-piston-gland/wanted',
      `designPistonGland requires a squeeze from 0 to below 100 % and a fill above 0 to 100 %, got ${squeezePercent} and ${fillPercent}`,
    );
  }
  const depthMm = ringSectionMm * (1 - squeezePercent / 100);
  const grooveBottomMm = boreMm - 2 * depthMm;
  requireLengths('design-piston-gland', 'designPistonGland', { grooveBottomMm });
  return {
    depthMm,
    grooveBottomMm,
    grooveWidthMm: (100 * sectionArea(ringSectionMm)) / (depthMm * fillPercent),
    stretchPercent: (100 * (grooveBottomMm - ringInsideMm)) / ringInsideMm,
  };
}
