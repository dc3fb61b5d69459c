import { MathsInputError } from '../check';

export type LobedSection = {
  /** How much a diameter measured across two points varies around the section, mm. */
  twoPointVariationMm: number;
  /** Difference of the two circles about the centre that hold the section, mm. */
  roundnessZoneMm: number;
  /** Whether measuring across two points shows the lobes at all. */
  twoPointSees: boolean;
};

/**
 * What measuring across two points sees of a section with n equal lobes,
 * r(t) = R + a cos(n t).
 *
 * The diameter r(t) + r(t + 180 deg) varies by 4a when n is even and not at all
 * when n is odd, while the roundness zone is 2a either way. A three-jaw chuck
 * leaves three lobes: invisible to a micrometer, plain in a V-block.
 *
 * Source: [iso-12181].
 *
 * @throws {MathsInputError} `lobed-section/lobes` unless a whole number from 2,
 *   `lobed-section/amplitude` unless finite and from zero up
 *
 * @example
 * lobedSection({ lobes: 3, amplitudeMm: 0.005 }); // twoPointVariationMm 0, roundnessZoneMm 0.01
 */
export function lobedSection(section: { lobes: number; amplitudeMm: number }): LobedSection {
  const { lobes, amplitudeMm } = section;
  if (!Number.isInteger(lobes) || lobes < 2) {
    throw new MathsInputError(
      'lobed-section/lobes',
      `lobedSection requires a whole number of lobes from 2, got ${lobes}`,
    );
  }
  if (!(Number.isFinite(amplitudeMm) && amplitudeMm >= 0)) {
    throw new MathsInputError(
      'lobed-section/amplitude',
      `lobedSection requires an amplitude from zero up, got ${amplitudeMm}`,
    );
  }
  const even = lobes % 2 === 0;
  return {
    twoPointVariationMm: even ? 4 * amplitudeMm : 0,
    roundnessZoneMm: 2 * amplitudeMm,
    twoPointSees: even && amplitudeMm > 0,
  };
}
