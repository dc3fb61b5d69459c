import type { Pair } from './cost-matrix';

/**
 * The smallest row with the smallest column, the next with the next, and so on.
 *
 * As many rows as columns. For every convex cost of the difference of two sizes no
 * pairing has a lower total, and for one that falls to a least value and rises again none
 * has a better worst pair: exchanging two partners that cross never makes the differences
 * reach further out. By the same exchange a limit below and one above the difference
 * leave this pairing complete whenever they leave any complete.
 *
 * Answers the pairs in the order of their sizes. Cost: O(n log n).
 * Source: Hoffman 1963 [burkard-2012] 5.2.
 *
 * @example
 * sortedPairs([3, 1], [0, 2]); // [[1, 0], [0, 1]]
 */
export function sortedPairs(rowSizes: readonly number[], columnSizes: readonly number[]): Pair[] {
  const columns = sortedOrder(columnSizes);
  return sortedOrder(rowSizes).map((row, k): Pair => [row, columns[k]!]);
}

function sortedOrder(sizes: readonly number[]): number[] {
  return sizes.map((_, i) => i).sort((a, b) => sizes[a]! - sizes[b]!);
}
