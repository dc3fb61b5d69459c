import { MathsInputError } from '../check';

export type CoverageInterval = { low: number; high: number };

/**
 * Interval that holds a part p of the draws: `symmetric` leaves as many below as above, `shortest` is
 * the narrowest there is (the first of them, when several are alike).
 *
 * With M draws in order and q = round(p M): symmetric from y_(r), r = round((M - q)/2), to y_(r+q);
 * shortest the smallest y_(r+q) - y_(r). Cost: O(M). Source: [jcgm-101] 7.7.
 *
 * @throws {MathsInputError} `coverage-interval/part`, `coverage-interval/too-few`
 *
 * @param sorted the draws in rising order; the order is not checked
 */
export function coverageInterval(
  sorted: ArrayLike<number>,
  part: number,
  kind: 'symmetric' | 'shortest',
): CoverageInterval {
  const m = sorted.length;
  if (!(part > 0 && part < 1)) {
    throw new MathsInputError(
      'coverage-interval/part',
      `coverageInterval requires a part above 0 and below 1, got ${part}`,
    );
  }
  const q = Math.floor(part * m + 0.5);
  if (q >= m || q < 1) {
    throw new MathsInputError(
      'coverage-interval/too-few',
      `coverageInterval requires more draws for a part of ${part}, got ${m}`,
    );
  }
  if (kind === 'symmetric') {
    const r = Math.max(1, Math.floor((m - q + 1) / 2));
    return { low: sorted[r - 1]!, high: sorted[r + q - 1]! };
  }
  let best = 0;
  for (let r = 1; r + q < m; r += 1) {
    if (sorted[r + q]! - sorted[r]! < sorted[best + q]! - sorted[best]!) best = r;
  }
  return { low: sorted[best]!, high: sorted[best + q]! };
}
