import { MathsInputError } from '../check';
import { normalCdf } from '../distributions/normal-cdf';
import { requireUncertainty } from './check-fit';

/**
 * Probability that the true value lies between two limits, from a measured
 * value and its standard uncertainty, taken as normal.
 *
 * P = PHI((upper - value)/u) - PHI((lower - value)/u), worked in the smaller
 * tail. With u = 0 it is 1 inside or on a limit and 0 outside. Any one unit; a
 * limit may be infinite. Source: [jcgm-106].
 *
 * @throws {MathsInputError} `probability-between/value`, `.../limits`, `.../uncertainty`
 *
 * @example
 * probabilityBetween({ value: 0, u: 1, lower: -1, upper: 1 }); // 0.6827
 */
export function probabilityBetween(question: {
  value: number;
  u: number;
  lower: number;
  upper: number;
}): number {
  const { value, u, lower, upper } = question;
  requireUncertainty('probability-between', 'probabilityBetween', u);
  if (!Number.isFinite(value)) {
    throw new MathsInputError(
      'probability-between/value',
      `probabilityBetween requires a finite value, got ${value}`,
    );
  }
  if (!(lower <= upper)) {
    throw new MathsInputError(
      'probability-between/limits',
      `probabilityBetween requires a lower limit up to the upper, got ${lower} and ${upper}`,
    );
  }
  if (u === 0) return value >= lower && value <= upper ? 1 : 0;
  const [low, high] = [(lower - value) / u, (upper - value) / u];
  return low > 0 ? normalCdf(-low) - normalCdf(-high) : normalCdf(high) - normalCdf(low);
}
