import type { AssignmentState } from './assign-rows';
import type { CostMatrix } from './cost-matrix';

/**
 * Lets rows without a column bid for one: augmenting row reduction.
 *
 * A row takes its cheapest column and lowers the price there until its second
 * cheapest is as good; the row it drives out bids next. Prices only fall, and only
 * of columns that then have a partner, so all that assignRows promises of them
 * stays true, and a row left over keeps a row price that is still not too high.
 * Bids that gain nothing are put off to the next of two rounds. Bidding may go
 * on for very long when prices move little by little, so it ends after 4 bids a row.
 *
 * Changes the state given; answers the rows still without a column.
 *
 * Cost: O(rows x columns). Source: [jonker-volgenant-1987], step "augmenting row reduction".
 *
 * @example
 * const left = reduceRows(matrix, state, waiting); // then augment from each of them
 */
export function reduceRows(
  { rows, columns, costs }: CostMatrix,
  { rowPrices, columnPrices, columnOfRow, rowOfColumn }: AssignmentState,
  waiting: readonly number[],
): number[] {
  let left = [...waiting];
  let bids = 4 * rows;
  for (let round = 0; round < 2 && left.length > 0; round += 1) {
    const bidders = left.reverse();
    left = [];
    while (bidders.length > 0) {
      const row = bidders.pop()!;
      if (bids === 0) left.push(row);
      else bid(row, bidders, left);
    }
  }
  return left;

  function bid(row: number, bidders: number[], putOff: number[]): void {
    bids -= 1;
    const offset = row * columns;
    let first = -1;
    let second = -1;
    let least = Infinity;
    let next = Infinity;
    for (let c = 0; c < columns; c += 1) {
      const reduced = costs[offset + c]! - columnPrices[c]!;
      if (reduced >= next) continue;
      if (reduced < least) {
        second = first;
        next = least;
        first = c;
        least = reduced;
      } else {
        second = c;
        next = reduced;
      }
    }
    const lowered = columnPrices[first]! - (next - least);
    const gains = lowered < columnPrices[first]!;
    if (next === Infinity || (!gains && least < next)) {
      // One column is all there is, or the gain is lost in rounding: no bid can be made.
      putOff.push(row);
      return;
    }
    if (gains) columnPrices[first] = lowered;
    const column = !gains && rowOfColumn[first]! >= 0 ? second : first;
    const outbid = rowOfColumn[column]!;
    rowPrices[row] = next;
    columnOfRow[row] = column;
    rowOfColumn[column] = row;
    if (outbid < 0) return;
    columnOfRow[outbid] = -1;
    (gains ? bidders : putOff).push(outbid);
  }
}
