/**
 * What a list of rows lost and won, from the list before it: rows are told apart by being the same object.
 *
 * Where both lists begin and end alike is passed over, so a row put last, or one changed in the middle, is found
 * for the price of comparing references; a row that only moved is in both answers. Cost: O(rows).
 */
export function rowsChanged<Row>(
  before: readonly Row[],
  after: readonly Row[],
): { gone: readonly Row[]; come: readonly Row[] } {
  const shorter = Math.min(before.length, after.length);
  let head = 0;
  while (head < shorter && before[head] === after[head]) head += 1;
  let tail = 0;
  while (
    tail < shorter - head &&
    before[before.length - 1 - tail] === after[after.length - 1 - tail]
  ) {
    tail += 1;
  }
  return {
    gone: before.slice(head, before.length - tail),
    come: after.slice(head, after.length - tail),
  };
}
