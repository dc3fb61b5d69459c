import { normalCdf } from '../distributions/normal-cdf';
import { refuse, requirePositive } from './guards';

export type PreControlChances = {
  /** Chance of each zone for one piece. */
  green: number;
  yellowLow: number;
  yellowHigh: number;
  /** Both reds together. */
  red: number;
  /** Five greens at the first go. */
  setUpPasses: number;
  /** That one sample of two stops the machine. */
  sampleStops: number;
};

/**
 * How often each zone comes up, and how often a set-up passes or a sample stops, for normal sizes.
 *
 *     limits at +-3 Cp sigma from the middle of the tolerance, lines at half of that
 *     set-up passes: green^5;  sample stops: red + (yellow low + yellow high) (1 - green)
 *
 * `meanOff` is how far the mean stands above the middle, in sigma. Limits: normal, steady sizes. Cost:
 * a few tail areas. Sources: [satterthwaite-1954]; the definition.
 *
 * @throws {MathsInputError} `pre-control-chances/not-positive`, `pre-control-chances/not-finite`
 *
 * @example
 * preControlChances(1, 0).green; // ~ 0.866386
 */
export function preControlChances(cp: number, meanOff: number): PreControlChances {
  requirePositive('preControlChances', 'Cp', cp);
  if (!Number.isFinite(meanOff)) {
    throw refuse('preControlChances', 'not-finite', `a finite distance off centre, got ${meanOff}`);
  }
  const limit = 3 * cp;
  const line = limit / 2;
  // Tail areas below, each worked in its own small tail.
  const redLow = normalCdf(-limit - meanOff);
  const redHigh = normalCdf(meanOff - limit);
  const yellowLow = normalCdf(-line - meanOff) - redLow;
  const yellowHigh = normalCdf(meanOff - line) - redHigh;
  const red = redLow + redHigh;
  const green = 1 - red - yellowLow - yellowHigh;
  return {
    green,
    yellowLow,
    yellowHigh,
    red,
    setUpPasses: green ** 5,
    sampleStops: red + (yellowLow + yellowHigh) * (1 - green),
  };
}
