import { requireValues } from './guards';
import { orderStatistic } from './order-statistic';

/**
 * Median: the middle value, or the mean of the two middle ones. The values are left as they are.
 *
 * Cost: O(n) on average and one copy. Source: by definition.
 *
 * @throws {MathsInputError} `median/too-few`, `median/value`
 *
 * @example
 * median([3, 1, 2, 10]); // 2.5
 */
export function median(values: ArrayLike<number>): number {
  requireValues('median', 'median', values, 1);
  const copy = Float64Array.from(values);
  const half = copy.length >> 1;
  const upper = orderStatistic(copy, half);
  if (copy.length % 2 === 1) return upper;
  let lower = -Infinity;
  for (let i = 0; i < half; i += 1) lower = Math.max(lower, copy[i]!);
  return lower + (upper - lower) / 2;
}
