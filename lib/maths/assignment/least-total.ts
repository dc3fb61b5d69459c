import { assignByLevels } from './assign-by-levels';
import { assignRows, type AssignmentStart } from './assign-rows';
import { transposed, type CostMatrix, type Pair } from './cost-matrix';

export type LeastTotal = {
  /** The chosen pairs in the order of the rows. */
  pairs: Pair[];
  total: number;
  /** Whether min(rows, columns) pairs were possible. */
  complete: boolean;
  /** Proof of a complete pairing: cost - row price - column price >= 0, zero on the pairs. */
  certificate?: { rowPrices: Float64Array; columnPrices: Float64Array };
};

/**
 * The most pairs that the forbidden ones allow, at the least total cost.
 *
 * Each row and each column in one pair at most. With unequal numbers the pieces
 * to spare are left out where that is cheapest. Where no complete pairing
 * exists, as many pairs as possible come first and the total second.
 * Pairings may tie; which of the tied is given is not promised.
 *
 * `start` as in assignRows, for square matrices. Exact for whole costs
 * with size x the largest below 2^53.
 *
 * Cost: O(n^3). Source: [jonker-volgenant-1987], [crouse-2016].
 *
 * @throws {MathsInputError} `assign-rows/shape`
 *
 * @example
 * leastTotal(costMatrix([[4, 1, 3], [2, 0, 5], [3, 2, 2]])).total; // 5
 */
export function leastTotal(matrix: CostMatrix, start?: AssignmentStart | Float64Array): LeastTotal {
  const turned = matrix.rows > matrix.columns;
  const upright = turned ? transposed(matrix) : matrix;
  const assigned = assignRows(upright, start);
  if (assigned === undefined) return result(matrix, largest(upright), turned);
  const { columnOfRow, rowPrices, columnPrices } = assigned;
  const found = result(matrix, columnOfRow, turned);
  found.complete = true;
  found.certificate = turned
    ? { rowPrices: columnPrices, columnPrices: rowPrices }
    : { rowPrices, columnPrices };
  return found;
}

/** Fewest forbidden pairs, then the least total, in a square filled up with rows that cost nothing. */
function largest({ rows, columns, costs }: CostMatrix): Int32Array {
  const forbidden = new Float64Array(columns * columns);
  const filled = new Float64Array(columns * columns);
  costs.forEach((cost, k) => {
    if (cost === Infinity) forbidden[k] = 1;
    else filled[k] = cost;
  });
  const columnOfRow = assignByLevels(columns, [forbidden, filled])!.slice(0, rows);
  return columnOfRow.map((column, row) => (forbidden[row * columns + column] === 1 ? -1 : column));
}

function result(matrix: CostMatrix, columnOfRow: Int32Array, turned: boolean): LeastTotal {
  const pairs: Pair[] = [];
  columnOfRow.forEach((column, row) => {
    if (column >= 0) pairs.push(turned ? [column, row] : [row, column]);
  });
  pairs.sort((a, b) => a[0] - b[0]);
  const total = pairs.reduce((sum, [r, c]) => sum + matrix.costs[r * matrix.columns + c]!, 0);
  return { pairs, total, complete: false };
}
