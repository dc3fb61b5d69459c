import { MathsInputError } from '../check';
import type { CostMatrix } from './cost-matrix';
import { reduceRows } from './reduce-rows';

export type AssignedRows = {
  /** Column of each row. */
  columnOfRow: Int32Array;
  /** Dual prices: cost - row price - column price is never below zero, and zero on chosen pairs. */
  rowPrices: Float64Array;
  columnPrices: Float64Array;
};

/** Where the search begins. Anything gives the same total, a good start gives it sooner. */
export type AssignmentStart = {
  /** A finite price for each column. */
  columnPrices: Float64Array;
  /** A column for each row, taken where it is free and at these prices none is cheaper. */
  columnOfRow?: Int32Array;
};

/**
 * A column for every row at the least total cost, each column used once.
 *
 * Each row takes its cheapest column; rows that find it taken outbid each other for
 * a while (reduceRows); what is then left goes by shortest augmenting paths with
 * potentials (Jonker and Volgenant 1987; Crouse 2016 for rows <= columns). The prices are the certificate: their sum is the
 * total, and no other choice can be cheaper. In a matrix with spare columns the
 * column prices are never above zero, and zero on columns left over.
 *
 * `start` is where the search begins (see sortedStart), or its prices alone. Only
 * for matrices with as many rows as columns.
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
  start?: AssignmentStart | Float64Array,
): AssignedRows | undefined {
  const from = start instanceof Float64Array ? { columnPrices: start } : start;
  const { rows, columns } = matrix;
  requireShape(matrix, from);
  const state: AssignmentState = {
    rowPrices: new Float64Array(rows),
    columnPrices: from?.columnPrices.slice() ?? columnMinima(matrix),
    columnOfRow: new Int32Array(rows).fill(-1),
    rowOfColumn: new Int32Array(columns).fill(-1),
  };
  if (!state.columnPrices.every(Number.isFinite)) return undefined;
  const waiting = takeCheapest(matrix, state, from?.columnOfRow);
  if (waiting === undefined) return undefined;
  const left = reduceRows(matrix, state, waiting);
  const { columnOfRow, rowPrices, columnPrices } = state;
  return left.every(augmenter(matrix, state))
    ? { columnOfRow, rowPrices, columnPrices }
    : undefined;
}

/** A partial assignment under way: -1 for no partner yet, prices as in AssignedRows. */
export type AssignmentState = AssignedRows & { rowOfColumn: Int32Array };

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

/**
 * Gives each row its cheapest column: the one it is to begin with if that is no dearer, else a free
 * one. Answers the rows that found it taken, or undefined when some row may have no column at all.
 */
function takeCheapest(
  { rows, columns, costs }: CostMatrix,
  { rowPrices, columnPrices, columnOfRow, rowOfColumn }: AssignmentState,
  hints: Int32Array | undefined,
): number[] | undefined {
  const waiting: number[] = [];
  for (let row = 0; row < rows; row += 1) {
    const offset = row * columns;
    let best = hints?.[row] ?? 0;
    let least = costs[offset + best]! - columnPrices[best]!;
    let isTaken = rowOfColumn[best]! >= 0;
    for (let c = 0; c < columns; c += 1) {
      const reduced = costs[offset + c]! - columnPrices[c]!;
      if (reduced > least || (reduced === least && !isTaken)) continue;
      if (reduced === least && rowOfColumn[c]! >= 0) continue;
      least = reduced;
      best = c;
      isTaken = rowOfColumn[c]! >= 0;
    }
    if (least === Infinity) return undefined;
    rowPrices[row] = least;
    if (isTaken) {
      waiting.push(row);
    } else {
      columnOfRow[row] = best;
      rowOfColumn[best] = row;
    }
  }
  return waiting;
}

/** A function that gives one more row a column by the shortest path, or answers false. */
function augmenter(
  { columns, costs }: CostMatrix,
  state: AssignmentState,
): (start: number) => boolean {
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

function requireShape({ rows, columns }: CostMatrix, start: AssignmentStart | undefined): void {
  const refuse = (what: string) =>
    new MathsInputError('assign-rows/shape', `assignRows requires ${what}`);
  if (rows > columns) throw refuse(`no more rows than columns, got ${rows} and ${columns}`);
  if (start === undefined) return;
  const { columnPrices, columnOfRow } = start;
  if (rows !== columns || columnPrices.length !== columns) {
    throw refuse(`a start for a square matrix, got ${columnPrices.length} prices`);
  }
  const odd = columnOfRow?.find((column) => !(column >= 0 && column < columns));
  if (odd !== undefined || (columnOfRow !== undefined && columnOfRow.length !== rows)) {
    throw refuse(
      `a column that exists to begin with for each row, got ${odd ?? columnOfRow!.length}`,
    );
  }
}
