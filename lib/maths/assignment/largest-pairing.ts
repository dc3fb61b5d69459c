import { emptyMatching, growMatching } from './grow-matching';
import type { CostMatrix, Pair } from './cost-matrix';

export type LargestPairing = {
  pairs: Pair[];
  complete: boolean;
  /**
   * Why no more pairs are possible: these rows have no legal partner outside these columns, and
   * there are more rows than columns by the number of rows left over. Empty when all rows are paired.
   */
  shortage: { rows: number[]; columns: number[] };
};

/**
 * The most pairs that can be made at once when some are forbidden, and the
 * pieces that stand in the way of more.
 *
 * Costs do not matter here, only which pairs are forbidden. The shortage is
 * Hall's: the rows reached from those left over by alternating paths, and the
 * columns they all compete for.
 *
 * Cost: O(rows^2 x columns), seldom reached. Source: Koenig and Hall, [lawler-1976].
 *
 * @example
 * largestPairing(costMatrix([[1, null], [2, null]]));
 * // pairs [[0, 0]], complete false, shortage rows [0, 1], columns [0]
 */
export function largestPairing(matrix: CostMatrix): LargestPairing {
  const matching = emptyMatching(matrix);
  growMatching(matrix, Infinity, matching);
  const pairs: Pair[] = [];
  matching.columnOfRow.forEach((column, row) => {
    if (column >= 0) pairs.push([row, column]);
  });
  const complete = pairs.length === Math.min(matrix.rows, matrix.columns);
  return { pairs, complete, shortage: shortageOf(matrix, matching) };
}

function shortageOf(
  { rows, columns, costs }: CostMatrix,
  { columnOfRow, rowOfColumn }: ReturnType<typeof emptyMatching>,
): LargestPairing['shortage'] {
  const reachedRows = [...columnOfRow.keys()].filter((row) => columnOfRow[row]! < 0);
  const reachedColumns = new Set<number>();
  for (let head = 0; head < reachedRows.length && head < rows; head += 1) {
    const row = reachedRows[head]!;
    for (let column = 0; column < columns; column += 1) {
      if (costs[row * columns + column] === Infinity || reachedColumns.has(column)) continue;
      reachedColumns.add(column);
      reachedRows.push(rowOfColumn[column]!);
    }
  }
  const order = (a: number, b: number) => a - b;
  return { rows: reachedRows.toSorted(order), columns: [...reachedColumns].sort(order) };
}
