import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { AssignmentState } from '@/lib/maths/assignment/assign-rows';
import { costMatrix, type CostMatrix } from '@/lib/maths/assignment/cost-matrix';
import { reduceRows } from '@/lib/maths/assignment/reduce-rows';

/** Nobody has a partner, column prices are 0 and each row's price is its least cost. */
function nothingYet({ rows, columns, costs }: CostMatrix): AssignmentState {
  return {
    rowPrices: Float64Array.from({ length: rows }, (_, row) =>
      Math.min(...costs.subarray(row * columns, (row + 1) * columns)),
    ),
    columnPrices: new Float64Array(columns),
    columnOfRow: new Int32Array(rows).fill(-1),
    rowOfColumn: new Int32Array(columns).fill(-1),
  };
}

const reduced = (matrix: CostMatrix) => {
  const state = nothingYet(matrix);
  const left = reduceRows(matrix, state, [...state.columnOfRow.keys()]);
  return { ...state, left };
};

describe('reduceRows', () => {
  it('keeps every reduced cost from falling below zero, and at zero on pairs', () => {
    const cell = fc.oneof(
      { weight: 4, arbitrary: fc.integer({ min: -9, max: 9 }) },
      { weight: 1, arbitrary: fc.constant(null) },
    );
    const matrices = fc
      .tuple(fc.integer({ min: 1, max: 8 }), fc.integer({ min: 0, max: 3 }))
      .chain(([rows, more]) =>
        fc.array(fc.array(cell, { minLength: rows + more, maxLength: rows + more }), {
          minLength: rows,
          maxLength: rows,
        }),
      )
      .filter((rows) => rows.every((row) => row.some((cost) => cost !== null)))
      .map(costMatrix);
    fc.assert(
      fc.property(matrices, (matrix) => {
        const { rowPrices, columnPrices, columnOfRow, rowOfColumn, left } = reduced(matrix);
        const free = [...columnOfRow.keys()].filter((row) => columnOfRow[row]! < 0);
        expect(left.toSorted((a, b) => a - b)).toEqual(free);
        matrix.costs.forEach((cost, k) => {
          const [row, column] = [Math.floor(k / matrix.columns), k % matrix.columns];
          const over = cost - rowPrices[row]! - columnPrices[column]!;
          if (columnOfRow[row] === column) expect(over).toBe(0);
          else expect(over).toBeGreaterThanOrEqual(0);
          expect(columnOfRow[row] === column).toBe(rowOfColumn[column] === row);
        });
        columnPrices.forEach((price, column) => {
          if (rowOfColumn[column]! < 0) expect(price).toBe(0);
          else expect(price).toBeLessThanOrEqual(0);
        });
      }),
      { numRuns: 300 },
    );
  });

  it('bids by the gap to the second cheapest', () => {
    // By hand: row 0 takes column 0 and lowers it by 8 - 1; row 1 then finds 3 - (-7) = 10 there and
    // takes column 1, at 4 with 10 next, lowered by 6.
    const state = reduced(
      costMatrix([
        [1, 8],
        [3, 4],
      ]),
    );
    expect([...state.columnOfRow]).toEqual([0, 1]);
    expect([...state.columnPrices]).toEqual([-7, -6]);
    expect([...state.rowPrices]).toEqual([8, 10]);
    expect(state.left).toEqual([]);
  });

  it('drives a row out for a better bid', () => {
    // By hand: row 0 takes column 0 at -1; row 1 finds 0 + 1 there against 9, takes it at -9; row 0
    // then finds 10 against 2 and takes column 1.
    const state = reduced(
      costMatrix([
        [1, 2],
        [0, 9],
      ]),
    );
    expect([...state.columnOfRow]).toEqual([1, 0]);
    expect(state.left).toEqual([]);
  });

  it('leaves rows that have one column only, and ends a war of small bids', () => {
    expect(reduced(costMatrix([[1], [1]].map(([cost]) => [cost!, null]))).left).toEqual([0, 1]);
    // Three rows fight over two columns a unit at a time, with a million to go to the third.
    const { left } = reduced(
      costMatrix([
        [0, 1, 1e6],
        [0, 1, 1e6],
        [0, 1, 1e6],
      ]),
    );
    expect(left).toHaveLength(1);
  });
});
