import { requireNotNegative, requirePositive } from '../control/guards';

export type FitnessInput = {
  /** Smallest step the gauge shows, mm. */
  resolutionMm: number;
  /** Expanded uncertainty of a size taken with it, mm. */
  uExpandedMm: number;
  /** Upper less lower limit of what is to be judged, mm. */
  toleranceMm: number;
};

export type GaugeFitness = {
  /**
   * `good`: judge by the limits as drawn; `guarded`: usable with guard bands; `unfit`: it cannot tell
   * good from bad.
   */
  fitness: 'good' | 'guarded' | 'unfit';
  /** True when one step of the gauge is more than a tenth of the tolerance. */
  tooCoarse: boolean;
  /** Uncertainty and resolution as shares of the tolerance. */
  uncertaintyShare: number;
  resolutionShare: number;
};

/** Shares are judged to this, so that a tenth typed in decimals is a tenth. */
const rounding = 1e-12;

/**
 * Whether a gauge is fit for a tolerance.
 *
 *     good: U <= T/10 and resolution <= T/10;  guarded: U <= T/4;  unfit: above that
 *
 * Limits: a gauge too coarse to be good may still be `guarded`; its steps are part of its uncertainty.
 * A size near a limit stays uncertain whatever the gauge. Cost: O(1). Source: [iso-22514-7] for the
 * tenth of the resolution; the shares of U are common practice, no source.
 *
 * @throws {MathsInputError} `gauge-fitness/negative`, `gauge-fitness/not-positive`
 *
 * @example
 * gaugeFitness({ resolutionMm: 0.001, uExpandedMm: 0.003, toleranceMm: 0.02 }).fitness; // 'guarded'
 */
export function gaugeFitness({
  resolutionMm,
  uExpandedMm,
  toleranceMm,
}: FitnessInput): GaugeFitness {
  requireNotNegative('gaugeFitness', 'resolution', resolutionMm);
  requireNotNegative('gaugeFitness', 'uncertainty', uExpandedMm);
  requirePositive('gaugeFitness', 'tolerance', toleranceMm);
  const uncertaintyShare = uExpandedMm / toleranceMm;
  const resolutionShare = resolutionMm / toleranceMm;
  const tooCoarse = resolutionShare > 0.1 + rounding;
  const isGood = !tooCoarse && uncertaintyShare <= 0.1 + rounding;
  const isUsable = uncertaintyShare <= 0.25 + rounding;
  return {
    fitness: isGood ? 'good' : isUsable ? 'guarded' : 'unfit',
    tooCoarse,
    uncertaintyShare,
    resolutionShare,
  };
}
