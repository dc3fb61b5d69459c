import { normalQuantile } from '../distributions/normal-quantile';

/**
 * Median of the range of two standard normal values: sqrt(2) z(0.75) ~ 0.953873.
 *
 * Divide the median moving range of two by it to get sigma; one wild jump moves the median far less
 * than the mean. No unit. Cost: one quantile. Source: the definition.
 *
 * @example
 * 3 / medianMovingRangeFactor(); // 3.14507..., limits of single values from the median moving range
 */
export function medianMovingRangeFactor(): number {
  return Math.SQRT2 * normalQuantile(0.75);
}
