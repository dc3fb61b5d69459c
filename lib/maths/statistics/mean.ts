import { requireValues } from './guards';

/**
 * Arithmetic mean, in two passes: sum/n, then the mean of what is left over is added.
 *
 * The second pass takes out the rounding of the first, so that large offsets keep all their digits.
 * Cost: O(n), two plain passes over numbers or a typed array. Source: [chan-1983].
 *
 * @throws {MathsInputError} `mean/too-few`, `mean/value`
 *
 * @example
 * mean([10.002, 10.004, 10.003]); // 10.003
 */
export function mean(values: ArrayLike<number>): number {
  const n = values.length;
  const first = sumOff(values, 0) / n;
  if (!Number.isFinite(first)) requireValues('mean', 'mean', values, 1);
  return first + sumOff(values, first) / n;
}

/** Sum of the values less an offset, in four strands that a processor can run side by side. */
function sumOff(values: ArrayLike<number>, offset: number): number {
  const n = values.length;
  const even = n - (n % 4);
  let a = 0;
  let b = 0;
  let c = 0;
  let d = 0;
  for (let i = 0; i < even; i += 4) {
    a += values[i]! - offset;
    b += values[i + 1]! - offset;
    c += values[i + 2]! - offset;
    d += values[i + 3]! - offset;
  }
  for (let i = even; i < n; i += 1) a += values[i]! - offset;
  return a + b + (c + d);
}
