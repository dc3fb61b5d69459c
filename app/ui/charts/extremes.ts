/** Where the ordinals reach a place: the first index whose ordinal is not below it. Binary search. */
export function firstAt(ordinals: ArrayLike<number>, place: number): number {
  let low = 0;
  let high = ordinals.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (ordinals[middle]! < place) low = middle + 1;
    else high = middle;
  }
  return low;
}

/**
 * Which of very many points to draw between two ordinals: for each of so many columns of the picture the
 * first, the smallest, the largest and the last, in their order. No extreme is ever left out, and no point is
 * made up. Where there are hardly more points than columns, all of them.
 *
 * Cost: O(points between the two).
 */
export function extremes(
  ordinals: ArrayLike<number>,
  sizes: ArrayLike<number>,
  from: number,
  to: number,
  columns: number,
): number[] {
  const [start, end] = [firstAt(ordinals, from), firstAt(ordinals, to)];
  if (end - start <= 2 * columns) {
    return Array.from({ length: end - start }, (_, i) => start + i);
  }
  const chosen: number[] = [];
  const width = (to - from) / columns;
  let i = start;
  for (let column = 0; column < columns && i < end; column += 1) {
    const edge = column === columns - 1 ? Infinity : from + (column + 1) * width;
    const first = i;
    let [least, most] = [i, i];
    for (; i < end && ordinals[i]! < edge; i += 1) {
      if (sizes[i]! < sizes[least]!) least = i;
      if (sizes[i]! > sizes[most]!) most = i;
    }
    if (i === first) continue;
    const four = [first, Math.min(least, most), Math.max(least, most), i - 1];
    for (const index of four) if (chosen.at(-1) !== index) chosen.push(index);
  }
  return chosen;
}
