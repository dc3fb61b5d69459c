import { transposed, type CostMatrix, type Pair } from './cost-matrix';
import { emptyMatching, growMatching, type Matching } from './grow-matching';
import { leastTotal } from './least-total';

export type Bottleneck = {
  pairs: Pair[];
  /** Cost of the worst chosen pair; no pairing of as many pairs has a better worst one. */
  worst: number;
  /** Least total among the pairings whose worst pair is that. */
  total: number;
  complete: boolean;
};

/**
 * The pairing whose worst pair is best, and among those the one of least total.
 *
 * As many pairs as the forbidden ones allow, at least one. The worst cost is
 * found by halving the list of distinct costs and growing a matching under each
 * (Gabow and Tarjan 1988 call it the bottleneck matching); then leastTotal with
 * everything dearer forbidden. Pairings may tie.
 *
 * Cost: O(n^3) and a sort of all costs. Source: [burkard-2012] 6.2.
 *
 * Answers undefined when every pair is forbidden.
 *
 * @example
 * bottleneck(costMatrix([[1, 6], [6, 10]])); // worst 6, total 12
 */
export function bottleneck(matrix: CostMatrix): Bottleneck | undefined {
  const upright = matrix.rows > matrix.columns ? transposed(matrix) : matrix;
  const most = growMatching(upright, Infinity, emptyMatching(upright));
  if (most === 0) return undefined;
  const costs = matrix.costs.filter((cost) => cost < Infinity).sort();
  const distinct = costs.filter((cost, k) => k === 0 || cost !== costs[k - 1]);
  const worst = leastThreshold(upright, distinct, most);
  const under = matrix.costs.map((cost) => (cost <= worst ? cost : Infinity));
  const { pairs, total, complete } = leastTotal({ ...matrix, costs: under });
  return { pairs, worst, total, complete };
}

/** The least of the sorted costs under which `most` pairs can be made. */
function leastThreshold(matrix: CostMatrix, sorted: Float64Array, most: number): number {
  let low = 0;
  let high = sorted.length - 1;
  let below = emptyMatching(matrix);
  while (low < high) {
    const middle = (low + high) >> 1;
    const tried = copied(below);
    if (growMatching(matrix, sorted[middle]!, tried, most === matrix.rows) === most) {
      high = middle;
    } else {
      low = middle + 1;
      below = tried;
    }
  }
  return sorted[low]!;
}

function copied({ columnOfRow, rowOfColumn }: Matching): Matching {
  return { columnOfRow: columnOfRow.slice(), rowOfColumn: rowOfColumn.slice() };
}
