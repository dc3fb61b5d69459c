import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { costMatrix, type CostMatrix, type Pair } from '@/lib/maths/assignment/cost-matrix';
import { largestPairing } from '@/lib/maths/assignment/largest-pairing';
import { bruteForce, costsOf } from './brute-force';
import { matrices } from './matrices';

describe('largestPairing', () => {
  it('makes as many pairs as brute force finds, and proves that more are impossible', () => {
    fc.assert(
      fc.property(matrices(6), (matrix) => {
        const { pairs, complete, shortage } = largestPairing(matrix);
        expectPairing(matrix, pairs);
        expect(pairs).toHaveLength(bruteForce(matrix).size);
        expect(complete).toBe(pairs.length === Math.min(matrix.rows, matrix.columns));
        // Hall: the rows named have partners among the columns named only.
        for (const row of shortage.rows) {
          for (let column = 0; column < matrix.columns; column += 1) {
            const isLegal = matrix.costs[row * matrix.columns + column]! < Infinity;
            if (isLegal) expect(shortage.columns).toContain(column);
          }
        }
        expect(shortage.rows.length - shortage.columns.length).toBe(matrix.rows - pairs.length);
      }),
      { numRuns: 300 },
    );
  });

  it('names the two rows that can only take the same column', () => {
    const rows = [
      [1, null, null],
      [2, null, null],
      [null, 3, 4],
    ];
    expect(largestPairing(costMatrix(rows)).shortage).toEqual({ rows: [0, 1], columns: [0] });
  });
});

function expectPairing(matrix: CostMatrix, pairs: readonly Pair[]): void {
  expect(new Set(pairs.map(([row]) => row)).size).toBe(pairs.length);
  expect(new Set(pairs.map(([, column]) => column)).size).toBe(pairs.length);
  expect(costsOf(matrix, pairs).every(Number.isFinite)).toBe(true);
}
