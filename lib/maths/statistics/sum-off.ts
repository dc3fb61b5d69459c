/**
 * Sum of the values less an offset, in four strands that a processor can run side by side.
 *
 * Cost: O(n).
 */
export function sumOff(values: ArrayLike<number>, offset: number): number {
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
