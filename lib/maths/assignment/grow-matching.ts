import type { CostMatrix } from './cost-matrix';

/** Partners found so far, -1 for none. */
export type Matching = { columnOfRow: Int32Array; rowOfColumn: Int32Array };

/**
 * Enlarges a matching by augmenting paths over pairs that cost no more than a
 * threshold, until it is as large as can be; changes the matching given.
 *
 * Breadth-first from each free row (Berge's theorem). A row whose search fails
 * stays free whatever comes later, so its columns are not searched again.
 * With `giveUp` the first such row ends the search: enough to know that not
 * every row can have a partner.
 *
 * Answers how many rows have a partner. Cost: O(rows^2 x columns), seldom reached.
 * Source: Berge 1957 [lawler-1976].
 *
 * @example
 * growMatching(matrix, Infinity, { columnOfRow, rowOfColumn }); // forbidden pairs never count
 */
export function growMatching(
  { rows, columns, costs }: CostMatrix,
  threshold: number,
  { columnOfRow, rowOfColumn }: Matching,
  giveUp = false,
): number {
  const from = new Int32Array(columns);
  const dead = new Uint8Array(columns);
  const open = new Int32Array(columns);
  const queue = new Int32Array(rows);
  const allows = (cost: number) => cost <= threshold && cost < Infinity;
  let size = 0;

  for (let row = 0; row < rows; row += 1) {
    if (columnOfRow[row]! >= 0) size += 1;
  }
  for (let start = 0; start < rows; start += 1) {
    if (columnOfRow[start]! >= 0) continue;
    const end = search(start);
    if (end >= 0) {
      turnOver(start, end);
      size += 1;
    } else if (giveUp) {
      return size;
    }
  }
  return size;

  function search(start: number): number {
    let left = 0;
    for (let c = 0; c < columns; c += 1) if (dead[c] === 0) open[left++] = c;
    queue[0] = start;
    let filled = 1;
    for (let head = 0; head < filled; head += 1) {
      const row = queue[head]!;
      for (let k = 0; k < left;) {
        const column = open[k]!;
        if (!allows(costs[row * columns + column]!)) {
          k += 1;
          continue;
        }
        from[column] = row;
        if (rowOfColumn[column]! < 0) return column;
        queue[filled++] = rowOfColumn[column]!;
        left -= 1;
        open[k] = open[left]!;
      }
    }
    for (let head = 1; head < filled; head += 1) dead[columnOfRow[queue[head]!]!] = 1;
    return -1;
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

/** A matching of nothing yet. */
export function emptyMatching({ rows, columns }: CostMatrix): Matching {
  return {
    columnOfRow: new Int32Array(rows).fill(-1),
    rowOfColumn: new Int32Array(columns).fill(-1),
  };
}
