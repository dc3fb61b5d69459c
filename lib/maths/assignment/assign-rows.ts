import { MathsInputError } from '../check';
import type { CostMatrix } from './cost-matrix';

export type AssignedRows = {
  /** Column of each row. */
  columnOfRow: Int32Array;
  /** Dual prices: cost - row price - column price is never below zero, and zero on chosen pairs. */
  rowPrices: Float64Array;
  columnPrices: Float64Array;
};

/**
 * A column for every row at the least total cost, each column used once.
 *
 * Shortest augmenting paths with potentials (Jonker and Volgenant 1987; Crouse
 * 2016 for rows <= columns). The prices are the certificate: their sum is the
 * total, and no other choice can be cheaper. In a matrix with spare columns the
 * column prices are never above zero, and zero on columns left over.
 *
 * `startPrices`, one a column, is where the search begins: any finite numbers
 * give the same total, good ones (see sortedStart) give it sooner. Only for
 * matrices with as many rows as columns.
 *
 * Exact when all costs are whole numbers and rows x the largest is below 2^53;
 * else right to the rounding of doubles. Answers undefined when the forbidden
 * pairs leave no column for some row.
 *
 * Cost: O(rows^2 x columns), seldom reached. Source: [jonker-volgenant-1987], [crouse-2016].
 *
 * @throws {MathsInputError} `assign-rows/shape` when rows outnumber columns or the start does not fit
 *
 * @example
 * assignRows(costMatrix([[4, 1], [2, 0]]))?.columnOfRow; // [1, 0]
 */
export function assignRows(
  matrix: CostMatrix,
  startPrices?: Float64Array,
): AssignedRows | undefined {
  const { rows, columns } = matrix;
  requireShape(matrix, startPrices);
  const columnPrices = startPrices?.slice() ?? columnMinima(matrix);
  const rowPrices = new Float64Array(rows);
  const columnOfRow = new Int32Array(rows).fill(-1);
  const rowOfColumn = new Int32Array(columns).fill(-1);
  if (!columnPrices.every(Number.isFinite)) return undefined;
  const waiting: number[] = [];
  for (let row = 0; row < rows; row += 1) {
    const column = cheapest(matrix, row, columnPrices, rowPrices, rowOfColumn);
    if (column < 0) return undefined;
    if (rowOfColumn[column]! < 0) {
      columnOfRow[row] = column;
      rowOfColumn[column] = row;
    } else {
      waiting.push(row);
    }
  }
  const augment = augmenter(matrix, { rowPrices, columnPrices, columnOfRow, rowOfColumn });
  return waiting.every(augment) ? { columnOfRow, rowPrices, columnPrices } : undefined;
}

/** Least cost of each column where the matrix is square; zero where columns are to spare. */
function columnMinima({ rows, columns, costs }: CostMatrix): Float64Array {
  const minima = new Float64Array(columns);
  if (rows < columns) return minima;
  minima.fill(Infinity);
  for (let r = 0; r < rows; r += 1) {
    for (let c = 0; c < columns; c += 1) {
      const cost = costs[r * columns + c]!;
      if (cost < minima[c]!) minima[c] = cost;
    }
  }
  return minima;
}

/** Column of the least reduced cost of a row, a free one first, or -1; sets the price of the row. */
function cheapest(
  { columns, costs }: CostMatrix,
  row: number,
  columnPrices: Float64Array,
  rowPrices: Float64Array,
  rowOfColumn: Int32Array,
): number {
  let best = -1;
  let least = Infinity;
  for (let c = 0; c < columns; c += 1) {
    const reduced = costs[row * columns + c]! - columnPrices[c]!;
    const freer = reduced === least && best >= 0 && rowOfColumn[best]! >= 0 && rowOfColumn[c]! < 0;
    if (reduced < least || freer) {
      least = reduced;
      best = c;
    }
  }
  rowPrices[row] = least;
  return best;
}

type State = {
  rowPrices: Float64Array;
  columnPrices: Float64Array;
  columnOfRow: Int32Array;
  rowOfColumn: Int32Array;
};

/** A function that gives one more row a column by the shortest path, or answers false. */
function augmenter({ columns, costs }: CostMatrix, state: State): (start: number) => boolean {
  const { rowPrices, columnPrices, columnOfRow, rowOfColumn } = state;
  const distance = new Float64Array(columns);
  const from = new Int32Array(columns);
  const open = new Int32Array(columns);
  const done = new Int32Array(columns);

  return (start) => {
    distance.fill(Infinity);
    for (let c = 0; c < columns; c += 1) open[c] = c;
    let left = columns;
    let reached = 0;
    let row = start;
    for (let sofar = 0; ;) {
      const offset = row * columns;
      const price = rowPrices[row]!;
      let least = Infinity;
      let at = -1;
      for (let k = 0; k < left; k += 1) {
        const c = open[k]!;
        const through = sofar + (costs[offset + c]! - price - columnPrices[c]!);
        let here = distance[c]!;
        if (through < here) {
          distance[c] = through;
          from[c] = row;
          here = through;
        }
        if (here < least || (here === least && here < Infinity && rowOfColumn[c]! < 0)) {
          least = here;
          at = k;
        }
      }
      if (at < 0) return false;
      sofar = least;
      const column = open[at]!;
      left -= 1;
      open[at] = open[left]!;
      row = rowOfColumn[column]!;
      if (row < 0) {
        reprice(start, sofar, reached);
        turnOver(start, column);
        return true;
      }
      done[reached] = column;
      reached += 1;
    }
  };

  function reprice(start: number, total: number, reached: number): void {
    rowPrices[start] = rowPrices[start]! + total;
    for (let k = 0; k < reached; k += 1) {
      const c = done[k]!;
      const less = total - distance[c]!;
      columnPrices[c] = columnPrices[c]! - less;
      const r = rowOfColumn[c]!;
      rowPrices[r] = rowPrices[r]! + less;
    }
  }

  function turnOver(start: number, end: number): void {
    for (let column = end; ;) {
      const row = from[column]!;
      const next = columnOfRow[row]!;
      rowOfColumn[column] = row;
      columnOfRow[row] = column;
      if (row === start) return;
      column = next;
    }
  }
}

function requireShape({ rows, columns }: CostMatrix, startPrices: Float64Array | undefined): void {
  if (rows > columns) {
    throw new MathsInputError(
      'assign-rows/shape',
      `assignRows requires no more rows than columns, got ${rows} and ${columns}`,
    );
  }
  if (startPrices !== undefined && (rows !== columns || startPrices.length !== columns)) {
    throw new MathsInputError(
      'assign-rows/shape',
      `assignRows requires a start for a square matrix, got ${startPrices.length} prices`,
    );
  }
}
