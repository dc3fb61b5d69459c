import { requireWhole } from './guards';

/**
 * Mean of the standard deviation (with n - 1) of n values from a normal population of sigma 1.
 *
 *     c4 = sqrt(2 / (n - 1)) Gamma(n / 2) / Gamma((n - 1) / 2)
 *
 * The ratio of gammas is stepped up from n = 2 by r(n + 1) = ((n - 1) / 2) / r(n), which neither
 * overflows nor gathers error. Limits: n from 2 to 100. Cost: O(n). Sources: [iso-7870-2],
 * [astm-e2587].
 *
 * @throws {MathsInputError} `c4/not-whole`
 *
 * @example
 * c4(2); // sqrt(2 / pi) ~ 0.797885
 */
export function c4(n: number): number {
  requireWhole('c4', 'number of values', n, 2, 100);
  let ratio = 1 / Math.sqrt(Math.PI);
  for (let k = 2; k < n; k += 1) ratio = (k - 1) / 2 / ratio;
  return Math.sqrt(2 / (n - 1)) * ratio;
}
