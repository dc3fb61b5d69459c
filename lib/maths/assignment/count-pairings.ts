import { MathsInputError } from '../check';
import { transposed, type CostMatrix } from './cost-matrix';

/**
 * How many complete pairings the forbidden pairs allow: how much choice there is.
 *
 * Counts ways to give every piece of the shorter side a partner of its own, by
 * going through the sets of used partners (the permanent of the matrix of
 * allowed pairs). At most 20 pieces on the longer side. Exact to 2^53, which 18
 * pieces with nothing forbidden do not reach; above that to the rounding of doubles.
 *
 * Cost: O(n 2^m), m the longer side. Source: definition of the permanent.
 *
 * @throws {MathsInputError} `count-pairings/too-many` above 20 pieces on a side
 *
 * @example
 * countPairings(costMatrix([[1, 1], [1, null]])); // 1
 */
export function countPairings(matrix: CostMatrix): number {
  const { rows, columns, costs } = matrix.rows > matrix.columns ? transposed(matrix) : matrix;
  if (columns > 20) {
    throw new MathsInputError(
      'count-pairings/too-many',
      `countPairings requires at most 20 pieces on a side, got ${columns}`,
    );
  }
  const ways = new Float64Array(2 ** columns);
  ways[0] = 1;
  let complete = 0;
  for (let used = 0; used < ways.length; used += 1) {
    const count = ways[used]!;
    if (count === 0) continue;
    const row = bitsIn(used);
    if (row === rows) {
      complete += count;
      continue;
    }
    for (let column = 0; column < columns; column += 1) {
      const bit = 1 << column;
      if ((used & bit) !== 0 || costs[row * columns + column] === Infinity) continue;
      ways[used | bit] = ways[used | bit]! + count;
    }
  }
  return complete;
}

function bitsIn(set: number): number {
  let count = 0;
  for (let rest = set; rest !== 0; rest &= rest - 1) count += 1;
  return count;
}
