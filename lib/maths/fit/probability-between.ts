import { requirePlace } from '../distributions/guards';
import { conformanceProbability } from '../metrology/conformance-probability';
import { requireLimits } from '../metrology/tolerance-limits';

/**
 * Probability that the true value lies between two limits, for values that may
 * be exact: conformanceProbability, and with u = 0 it is 1 inside or on a limit
 * and 0 outside.
 *
 * Any one unit; a limit may be infinite. Source: [jcgm-106].
 *
 * @throws {MathsInputError} `conformance-probability/value`, `.../limits`, `.../uncertainty`,
 *   and for u = 0 `probability-between/place`, `.../limits`
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
  if (u === 0) {
    requireLimits('probabilityBetween', 'probability-between', { lower, upper });
    requirePlace('probabilityBetween', 'probability-between', value);
    return value >= lower && value <= upper ? 1 : 0;
  }
  return conformanceProbability(value, u, { lower, upper });
}
