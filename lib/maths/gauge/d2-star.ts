import { rangeMoments } from '../control/range-moments';
import { requireWhole } from '../control/guards';

/**
 * Divisor that turns the mean of g ranges of m normal values into sigma, for few ranges.
 *
 *     d2*(m, g) = sqrt(d2(m)^2 + d3(m)^2 / g)
 *
 * With many ranges it becomes d2. A gauge study uses 1 / d2*(operators, 1) for K2 and
 * 1 / d2*(parts, 1) for K3. Limits: m from 2 to 100, g of 1 or more. Cost: that of `rangeMoments`.
 * Sources: [iso-22514-7]; [aiag-msa] (from memory).
 *
 * @throws {MathsInputError} `d2-star/not-whole`, `range-moments/not-whole`
 *
 * @example
 * 1 / d2Star(2, 1); // ~ 0.707107
 */
export function d2Star(m: number, g: number): number {
  requireWhole('d2Star', 'number of ranges', g, 1, Infinity);
  const { d2, d3 } = rangeMoments(m);
  return Math.sqrt(d2 * d2 + (d3 * d3) / g);
}
