import { centred } from './centred';
import { requireCount, requireSpread } from './guards';

/**
 * Lag-1 autocorrelation: sum (x_i - m)(x_(i+1) - m) / sum (x_i - m)^2, at least two values.
 *
 * Near zero for values that do not remember each other, near one for a steady drift. Cost: O(n).
 * Source: [strd], the definition its certified values follow.
 *
 * @throws {MathsInputError} `lag-one-autocorrelation/too-few`,
 *   `lag-one-autocorrelation/no-spread`, `mean/value`
 */
export function lagOneAutocorrelation(values: ArrayLike<number>): number {
  const n = values.length;
  requireCount('lagOneAutocorrelation', 'lag-one-autocorrelation', n, 2);
  const { mean, squares } = centred(values);
  requireSpread('lagOneAutocorrelation', 'lag-one-autocorrelation', squares);
  let products = 0;
  let before = values[0]! - mean;
  for (let i = 1; i < n; i += 1) {
    const here = values[i]! - mean;
    products += before * here;
    before = here;
  }
  return products / squares;
}
