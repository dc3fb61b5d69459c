import type { CostMatrix, Pair } from '@/lib/maths/assignment/cost-matrix';

/** Every way to pair rows with columns, each used once at most, forbidden pairs left out. */
export function allPairings({ rows, columns, costs }: CostMatrix): Pair[][] {
  const grow = (row: number, used: number): Pair[][] => {
    if (row === rows) return [[]];
    const without = grow(row + 1, used);
    const taken = Array.from({ length: columns }, (_, column) => column)
      .filter((column) => (used & (1 << column)) === 0 && costs[row * columns + column]! < Infinity)
      .flatMap((column) =>
        grow(row + 1, used | (1 << column)).map((rest): Pair[] => [[row, column], ...rest]),
      );
    return [...without, ...taken];
  };
  return grow(0, 0);
}

/** Costs of the pairs of one pairing. */
export function costsOf({ columns, costs }: CostMatrix, pairs: readonly Pair[]): number[] {
  return pairs.map(([row, column]) => costs[row * columns + column]!);
}

export const sum = (values: readonly number[]) => values.reduce((all, one) => all + one, 0);

/** Brute force over the pairings of the largest size: least total, bottleneck, total at it, count. */
export function bruteForce(matrix: CostMatrix) {
  const all = allPairings(matrix);
  const size = Math.max(...all.map((pairs) => pairs.length));
  const largest = all.filter((pairs) => pairs.length === size).map((one) => costsOf(matrix, one));
  const worst = Math.min(...largest.map((costs) => Math.max(...costs)));
  const atWorst = largest.filter((costs) => Math.max(...costs) === worst);
  return {
    size,
    total: Math.min(...largest.map(sum)),
    worst,
    totalAtWorst: Math.min(...atWorst.map(sum)),
    count: largest.length,
  };
}
