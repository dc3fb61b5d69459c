import { requireValues } from './guards';
import type { SpreadOfSet } from './pooled-standard-deviation';

/**
 * Standard deviation of a single reading from k pairs of repeats: sqrt(sum d^2 / (2k)), d the
 * difference of the two, with k degrees of freedom.
 *
 * Cost: O(k). Source: [jcgm-100] 4.2.4 for pooling; for pairs nu_i = 1 and s_i^2 = d_i^2/2.
 *
 * @throws {MathsInputError} `spread-of-pairs/too-few`, `spread-of-pairs/value`
 *
 * @example
 * spreadOfPairs([0.001, -0.002, 0.002]); // { sd: 0.001225, degrees: 3 }
 */
export function spreadOfPairs(differences: readonly number[]): SpreadOfSet {
  requireValues('spreadOfPairs', 'spread-of-pairs', differences, 1);
  const squares = differences.reduce((sum, d) => sum + d * d, 0);
  return { sd: Math.sqrt(squares / (2 * differences.length)), degrees: differences.length };
}
