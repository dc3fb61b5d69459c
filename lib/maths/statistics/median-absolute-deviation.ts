import { median } from './median';

/**
 * Median distance from the median, not scaled.
 *
 * Times 1.482602218505602 it estimates the sigma of a normal population, and one wild value hardly
 * moves it. Cost: O(n) on average. Source: [hampel-1974].
 *
 * @throws {MathsInputError} `median/too-few`, `median/value`
 *
 * @example
 * medianAbsoluteDeviation([1, 1, 2, 2, 4, 6, 9]); // 1
 */
export function medianAbsoluteDeviation(values: ArrayLike<number>): number {
  const middle = median(values);
  const distances = new Float64Array(values.length);
  for (let i = 0; i < values.length; i += 1) distances[i] = Math.abs(values[i]! - middle);
  return median(distances);
}
