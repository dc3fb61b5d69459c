import { MathsInputError } from '../check';
import { requireValues } from './guards';
import { orderStatistic } from './order-statistic';

/**
 * Where between the ordered values a quantile stands, by the types of Hyndman and Fan (1996):
 * `midpoint` is type 5, `weibull` 6, `mode` 7 (the usual default elsewhere), `median-unbiased` 8.
 */
export type QuantileRule = 'midpoint' | 'weibull' | 'mode' | 'median-unbiased';

/**
 * Sample quantile: position h by the rule, then straight between the ordered values beside it,
 * never beyond the ends.
 *
 * h = np + 1/2, (n+1)p, (n-1)p + 1 or (n + 1/3)p + 1/3. With few values the rules differ: name the
 * one used. Cost: O(n) on average and one copy. Source: [hyndman-fan-1996].
 *
 * @throws {MathsInputError} `quantile/too-few`, `quantile/value`, `quantile/chance`
 *
 * @example
 * quantile([1, 2, 3, 4], 0.25, 'mode'); // 1.75
 */
export function quantile(values: ArrayLike<number>, p: number, rule: QuantileRule): number {
  requireValues('quantile', 'quantile', values, 1);
  if (!(p >= 0 && p <= 1)) {
    throw new MathsInputError('quantile/chance', `quantile requires 0 to 1, got ${p}`);
  }
  const copy = Float64Array.from(values);
  const n = copy.length;
  const position = Math.min(n, Math.max(1, placeOf(p, n, rule)));
  const below = Math.floor(position);
  const low = orderStatistic(copy, below - 1);
  if (position === below) return low;
  let next = Infinity;
  for (let i = below; i < n; i += 1) next = Math.min(next, copy[i]!);
  return low + (position - below) * (next - low);
}

function placeOf(p: number, n: number, rule: QuantileRule): number {
  if (rule === 'midpoint') return n * p + 0.5;
  if (rule === 'weibull') return (n + 1) * p;
  if (rule === 'mode') return (n - 1) * p + 1;
  return (n + 1 / 3) * p + 1 / 3;
}
