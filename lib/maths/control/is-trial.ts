/** Limits from fewer points than this are trial limits: common practice, no source. */
const settledCount = 20;

/**
 * True when there are so few points (single pieces or subgroups) that their limits are trial limits.
 *
 * @example
 * isTrial(19); // true
 */
export function isTrial(count: number): boolean {
  return count < settledCount;
}
