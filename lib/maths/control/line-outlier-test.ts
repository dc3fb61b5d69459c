import { refuse } from './guards';
import { leastSquaresLine } from './least-squares-line';
import { leverage } from './leverage';
import { lineAt } from './line-at';
import { lineOutlierCritical } from './line-outlier-critical';

export type LineOutlier = {
  /** Place (from 0) of the reading that stands farthest off the line for its place on it. */
  index: number;
  /** How far it is off the line through all readings, units of y; above is positive. */
  residual: number;
  /** Its studentized residual, never negative, and what a clean run stays below. */
  studentized: number;
  critical: number;
  isOutlier: boolean;
};

/**
 * Test of the reading that stands farthest off a straight line: the mean-shift outlier test.
 *
 *     r_i = e_i / (s sqrt(1 - h_i)),  the largest |r_i| against `lineOutlierCritical`
 *
 * The same as asking whether the line fits better when that reading alone may lie anywhere. One outlier
 * is looked for; two alike hide each other. Never a reason to delete: ask, and keep the reading.
 *
 * Limits: as of `leastSquaresLine`; four readings or more, not all exactly on one line.
 * Cost: O(n). Sources: [cook-weisberg-1982], [lund-1975].
 *
 * @throws {MathsInputError} as of `leastSquaresLine`; `line-outlier-test/no-spread`,
 *   `line-outlier-critical/not-whole`, `line-outlier-critical/significance`
 *
 * @example
 * lineOutlierTest([1, 2, 3, 4, 5, 6], [0, 1.1, 2, 2.9, 9, 5], 0.05).index; // 4
 */
export function lineOutlierTest(
  x: readonly number[],
  y: readonly number[],
  significance: number,
): LineOutlier {
  const line = leastSquaresLine(x, y);
  const critical = lineOutlierCritical(x.length, significance);
  if (!(line.residualSd > 0)) {
    throw refuse(
      'lineOutlierTest',
      'no-spread',
      'readings that scatter about their line, got none',
    );
  }
  let index = 0;
  let studentized = -1;
  let residual = 0;
  for (let i = 0; i < x.length; i += 1) {
    const off = y[i]! - lineAt(line, x[i]!);
    const free = 1 - leverage(line, x[i]!);
    // A reading that holds the line by itself cannot be told to be off it.
    const size = free > leastFree ? Math.abs(off) / (line.residualSd * Math.sqrt(free)) : 0;
    if (size > studentized) [index, studentized, residual] = [i, size, off];
  }
  return { index, residual, studentized, critical, isOutlier: studentized > critical };
}

const leastFree = 1e-9;
