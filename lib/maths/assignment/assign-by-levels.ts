import { MathsInputError } from '../check';
import { assignRows } from './assign-rows';

/**
 * A complete assignment of a square matrix at the least total of a first cost,
 * among those the least of a second, and so on.
 *
 * `levels[k][row * size + column]` is the k-th cost; Infinity anywhere forbids
 * the pair. After each level only pairs of zero reduced cost stay: exactly the
 * pairs that its cheapest assignments are made of, so no weight of one level
 * against the next is needed and nothing is lost to rounding.
 *
 * All levels but the last must be whole numbers with size x the largest below
 * 2^53. Answers the column of each row, or undefined when the forbidden pairs
 * leave no complete assignment.
 *
 * Cost: O(levels x size^3). Source: complementary slackness, [jonker-volgenant-1987].
 *
 * @throws {MathsInputError} `assign-by-levels/shape`, `assign-by-levels/not-whole`
 *
 * @example
 * // Fewest forbidden pairs first, then the least total.
 * assignByLevels(2, [Float64Array.of(0, 1, 0, 1), Float64Array.of(3, 0, 5, 0)]); // [0, 1]
 */
export function assignByLevels(
  size: number,
  levels: readonly Float64Array[],
): Int32Array | undefined {
  requireLevels(size, levels);
  const allowed = new Uint8Array(size * size).fill(1);
  let columnOfRow: Int32Array | undefined;
  for (const level of levels) {
    const costs = level.map((cost, k) => (allowed[k] === 1 ? cost : Infinity));
    const assigned = assignRows({ rows: size, columns: size, costs });
    if (assigned === undefined) return undefined;
    const { rowPrices, columnPrices } = assigned;
    for (let row = 0; row < size; row += 1) {
      for (let column = 0; column < size; column += 1) {
        const k = row * size + column;
        if (costs[k]! - rowPrices[row]! - columnPrices[column]! !== 0) allowed[k] = 0;
      }
    }
    columnOfRow = assigned.columnOfRow;
  }
  return columnOfRow;
}

function requireLevels(size: number, levels: readonly Float64Array[]): void {
  if (levels.length === 0 || levels.some((level) => level.length !== size * size)) {
    throw new MathsInputError(
      'assign-by-levels/shape',
      `assignByLevels requires levels of ${size} x ${size} costs, got ${levels.length} levels`,
    );
  }
  for (const level of levels.slice(0, -1)) {
    const odd = level.find((cost) => !Number.isInteger(cost) && cost !== Infinity);
    if (odd === undefined) continue;
    throw new MathsInputError(
      'assign-by-levels/not-whole',
      `assignByLevels requires whole costs on all levels but the last, got ${odd}`,
    );
  }
}
