/**
 * The values in rising order, in a new array; quick where they are many and spread without wild ones.
 *
 * They are dealt into equal steps of their range, then each step is put in order: by insertion where
 * few came together, by the sort of the language where many did, so that no set of values takes much
 * longer than that. Which of two zeros of opposite sign comes first is left open.
 *
 * Finite values only. Cost: O(n) for smooth distributions, O(n log n) at worst.
 * Source: [knuth-3] 5.2.5, distribution sorting.
 *
 * @example
 * sortedDraws(Float64Array.of(3, 1, 2)); // 1, 2, 3
 */
export function sortedDraws(values: Float64Array): Float64Array {
  const n = values.length;
  let low = Infinity;
  let high = -Infinity;
  for (let i = 0; i < n; i += 1) {
    const value = values[i]!;
    if (value < low) low = value;
    if (value > high) high = value;
  }
  const steps = Math.max(1, n >> 1);
  const scale = (steps - 1) / (high - low);
  if (!(scale > 0 && scale < Infinity)) return values.slice().sort();
  const { sorted, ends } = dealt(values, low, scale, steps);
  for (let step = 0, from = 0; step < steps; step += 1) {
    const to = ends[step]!;
    if (to - from > 40) sorted.subarray(from, to).sort();
    else insertionSort(sorted, from, to);
    from = to;
  }
  return sorted;
}

/** Values by the step they fall into, and where each step ends. */
function dealt(
  values: Float64Array,
  low: number,
  scale: number,
  steps: number,
): { sorted: Float64Array; ends: Int32Array } {
  const n = values.length;
  const ends = new Int32Array(steps);
  for (let i = 0; i < n; i += 1) {
    const step = Math.floor((values[i]! - low) * scale);
    ends[step] = ends[step]! + 1;
  }
  for (let step = 0, sum = 0; step < steps; step += 1) {
    const count = ends[step]!;
    ends[step] = sum;
    sum += count;
  }
  // Each end starts as the beginning of its step and moves on as the step fills.
  const sorted = new Float64Array(n);
  for (let i = 0; i < n; i += 1) {
    const value = values[i]!;
    const step = Math.floor((value - low) * scale);
    const at = ends[step]!;
    sorted[at] = value;
    ends[step] = at + 1;
  }
  return { sorted, ends };
}

function insertionSort(values: Float64Array, from: number, to: number): void {
  for (let i = from + 1; i < to; i += 1) {
    const value = values[i]!;
    let at = i;
    while (at > from && values[at - 1]! > value) {
      values[at] = values[at - 1]!;
      at -= 1;
    }
    values[at] = value;
  }
}
