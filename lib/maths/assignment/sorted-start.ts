import { MathsInputError } from '../check';
import { sortedPairs } from './sorted-pairs';

/**
 * Column prices from the sorted order of the pieces, to start assignRows with.
 *
 * When the cost is a convex function of the difference of two sizes, the sorted
 * order is a cheapest pairing (Monge), and prices that prove it need only the
 * costs of neighbours: p[k+1] - p[k] lies between c(k+1,k+1) - c(k+1,k) and
 * c(k,k+1) - c(k,k), rows and columns in sorted order; the middle is taken.
 * With locked, forbidden or differently uncertain pieces the prices are no
 * proof any more but still close, and assignRows is right from any start.
 *
 * `costOf` must be finite for every pair. As many rows as columns.
 *
 * Cost: O(n log n). Source: Hoffman 1963 [burkard-2012] 5.2.
 *
 * @throws {MathsInputError} `sorted-start/shape`
 *
 * @example
 * sortedStart([3, 1], [0, 2], (row, column) => Math.abs(bores[row] - shafts[column]));
 */
export function sortedStart(
  rowSizes: readonly number[],
  columnSizes: readonly number[],
  costOf: (row: number, column: number) => number,
): Float64Array {
  if (rowSizes.length !== columnSizes.length) {
    throw new MathsInputError(
      'sorted-start/shape',
      `sortedStart requires as many rows as columns, got ${rowSizes.length} and ${columnSizes.length}`,
    );
  }
  const pairs = sortedPairs(rowSizes, columnSizes);
  const prices = new Float64Array(pairs.length);
  for (let k = 0; k + 1 < pairs.length; k += 1) {
    const [[row, column], [nextRow, next]] = [pairs[k]!, pairs[k + 1]!];
    const least = costOf(nextRow, next) - costOf(nextRow, column);
    const most = costOf(row, next) - costOf(row, column);
    prices[next] = prices[column]! + (least + most) / 2;
  }
  return prices;
}
