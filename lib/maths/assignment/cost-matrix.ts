import { MathsInputError } from '../check';

/** What every possible pair costs, row by row in one flat array. */
export type CostMatrix = {
  rows: number;
  columns: number;
  /** `costs[row * columns + column]`; Infinity forbids the pair, all others are finite. */
  costs: Float64Array;
};

/** One chosen pair, counted from 0. */
export type Pair = readonly [row: number, column: number];

/**
 * A cost matrix from rows of numbers, null for a pair that may not be.
 *
 * At least one row and one column; costs of any sign, finite. Cost: O(rows x columns).
 *
 * @throws {MathsInputError} `cost-matrix/shape`, `cost-matrix/cost`
 *
 * @example
 * costMatrix([[4, null], [2, 5]]); // two rows, two columns, one pair forbidden
 */
export function costMatrix(rows: readonly (readonly (number | null)[])[]): CostMatrix {
  const columns = rows[0]?.length ?? 0;
  if (columns === 0 || rows.some((row) => row.length !== columns)) {
    throw new MathsInputError(
      'cost-matrix/shape',
      `costMatrix requires rows of equal length, at least one of one, got ${rows.length} rows`,
    );
  }
  const costs = new Float64Array(rows.length * columns);
  rows.forEach((row, r) =>
    row.forEach((cost, c) => {
      if (cost !== null && !Number.isFinite(cost)) {
        throw new MathsInputError(
          'cost-matrix/cost',
          `costMatrix requires finite costs or null, got ${cost} at row ${r}, column ${c}`,
        );
      }
      costs[r * columns + c] = cost ?? Infinity;
    }),
  );
  return { rows: rows.length, columns, costs };
}

/** The same pairs with rows and columns exchanged. */
export function transposed({ rows, columns, costs }: CostMatrix): CostMatrix {
  const turned = new Float64Array(costs.length);
  for (let r = 0; r < rows; r += 1) {
    for (let c = 0; c < columns; c += 1) turned[c * rows + r] = costs[r * columns + c]!;
  }
  return { rows: columns, columns: rows, costs: turned };
}
