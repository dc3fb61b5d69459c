import { MathsInputError } from '../check';

/** Two inputs that move together: their places and the correlation of their errors, -1 to 1. */
export type Correlation = { first: number; second: number; coefficient: number };

/**
 * Combined standard uncertainty by the law of propagation:
 * u^2 = sum c_i^2 u_i^2 + 2 sum_{i<j} c_i c_j u_i u_j r_ij.
 *
 * `contributions` are c_i u_i with their signs. Errors shared by two readings of one instrument have
 * r = 1 and cancel in a difference. Cost: O(inputs + correlations). Source: [jcgm-100] 5.1.2, 5.2.2.
 *
 * @throws {MathsInputError} `combined-uncertainty/contribution`,
 *   `combined-uncertainty/correlation`
 *
 * @example
 * combinedUncertainty([0.001, -0.001], [{ first: 0, second: 1, coefficient: 0.8 }]); // 0.000632
 */
export function combinedUncertainty(
  contributions: readonly number[],
  correlations: readonly Correlation[] = [],
): number {
  const bad = contributions.findIndex((part) => !Number.isFinite(part));
  if (bad >= 0) {
    throw new MathsInputError(
      'combined-uncertainty/contribution',
      `combinedUncertainty requires finite contributions, got ${contributions[bad]} at index ${bad}`,
    );
  }
  const own = contributions.reduce((sum, part) => sum + part * part, 0);
  const shared = correlations.reduce((sum, correlation) => {
    const { first, second, coefficient } = correlation;
    const [a, b] = [contributions[first], contributions[second]];
    const isFit = a !== undefined && b !== undefined && first !== second;
    if (!isFit || !(Math.abs(coefficient) <= 1)) {
      throw new MathsInputError(
        'combined-uncertainty/correlation',
        `combinedUncertainty requires two different inputs and -1 to 1, got ${first}, ${second} and ${coefficient}`,
      );
    }
    return sum + 2 * a * b * coefficient;
  }, 0);
  // Full correlation may cancel everything; rounding must not take the rest below nothing.
  return Math.sqrt(Math.max(0, own + shared));
}
