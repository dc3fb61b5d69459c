const firstMs = 1000;
const longestMs = 60_000;

/**
 * How long to rest after so many failures in a row, ms: doubling from one second to one minute, and of that
 * a random half to whole, so that devices cut off together do not come back together.
 *
 * @example backOffMs(1, () => 0) // 500
 */
export function backOffMs(failures: number, random: () => number): number {
  const wholeMs = Math.min(longestMs, firstMs * 2 ** (failures - 1));
  return wholeMs * (0.5 + random() / 2);
}
