import { MathsInputError } from '../check';
import { normalCdf } from '../distributions/normal-cdf';
import { requireLimits, type ToleranceLimits } from './tolerance-limits';

/**
 * Probability that a size measured as y with standard uncertainty u lies inside its limits:
 * PHI((U - y)/u) - PHI((L - y)/u); one term falls away with its limit.
 *
 * Normal knowledge of the size, nothing else known of the process. Limits belong to the inside.
 * Cost: O(1). Source: [jcgm-106] 7.
 *
 * @throws {MathsInputError} `conformance-probability/limits`,
 *   `conformance-probability/uncertainty`, `conformance-probability/value`
 *
 * @example
 * conformanceProbability(13.6, 1.8, { lower: 12.5, upper: 16.3 }); // 0.6626
 */
export function conformanceProbability(y: number, u: number, limits: ToleranceLimits): number {
  requireLimits('conformanceProbability', 'conformance-probability', limits);
  if (!(u > 0 && u < Infinity)) {
    throw new MathsInputError(
      'conformance-probability/uncertainty',
      `conformanceProbability requires an uncertainty above zero, got ${u}`,
    );
  }
  if (!Number.isFinite(y)) {
    throw new MathsInputError(
      'conformance-probability/value',
      `conformanceProbability requires a finite value, got ${y}`,
    );
  }
  const low = ((limits.lower ?? -Infinity) - y) / u;
  const high = ((limits.upper ?? Infinity) - y) / u;
  // The difference is taken in the tail that is small.
  return low > 0 ? normalCdf(-low) - normalCdf(-high) : normalCdf(high) - normalCdf(low);
}
