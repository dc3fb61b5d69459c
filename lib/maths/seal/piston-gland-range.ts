import { MathsInputError } from '../check';
import { requireLengths, sectionArea } from './check-seal';

/** Smallest and largest of a size, mm. */
export type SizeRange = { leastMm: number; mostMm: number };

/** Smallest and largest of a percentage. */
export type PercentRange = { least: number; most: number };

/**
 * Least and most squeeze and fill of a piston gland over the limits of its sizes.
 *
 * Squeeze is least with the largest bore, the smallest groove bottom and the
 * thinnest ring; fill is least with the thinnest ring in the deepest, widest
 * groove. Every size anywhere in its range, whatever the others do.
 *
 * Source: [iso-3601-2], definitions of the trade.
 *
 * @throws {MathsInputError} `piston-gland-range/length`, `piston-gland-range/range`
 *
 * @example
 * pistonGlandRange({ bore, grooveBottom, ringSection, grooveWidth }).squeezePercent; // 13.4 to 20.1
 */
export function pistonGlandRange(gland: {
  bore: SizeRange;
  grooveBottom: SizeRange;
  ringSection: SizeRange;
  grooveWidth: SizeRange;
}): { squeezePercent: PercentRange; fillPercent: PercentRange } {
  for (const range of Object.values(gland)) {
    requireLengths('piston-gland-range', 'pistonGlandRange', range);
    if (range.leastMm <= range.mostMm) continue;
    throw new MathsInputError(
      'piston-gland-range/range',
      `pistonGlandRange requires the least up to the most, got ${range.leastMm} and ${range.mostMm}`,
    );
  }
  const { bore, grooveBottom, ringSection, grooveWidth } = gland;
  const shallow = (bore.leastMm - grooveBottom.mostMm) / 2;
  const deep = (bore.mostMm - grooveBottom.leastMm) / 2;
  requireLengths('piston-gland-range', 'pistonGlandRange', { 'the shallowest depth': shallow });
  const squeeze = (depth: number, section: number) => 100 * (1 - depth / section);
  const fill = (section: number, depth: number, width: number) =>
    (100 * sectionArea(section)) / (depth * width);
  return {
    squeezePercent: {
      least: squeeze(deep, ringSection.leastMm),
      most: squeeze(shallow, ringSection.mostMm),
    },
    fillPercent: {
      least: fill(ringSection.leastMm, deep, grooveWidth.mostMm),
      most: fill(ringSection.mostMm, shallow, grooveWidth.leastMm),
    },
  };
}
