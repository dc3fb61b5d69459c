/** The smallest figure that at least the share `p` of them does not exceed: a figure that was measured. */
export function quantileOf(values: readonly number[], p: number): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.max(0, Math.ceil(p * sorted.length) - 1)]!;
}
