import { centred } from './centred';
import { requireCount, requireSpread } from './guards';

export type Shape = {
  /** Skewness of the moments, m3/m2^1.5. Above zero: the long tail is to the high side. */
  g1: number;
  /** Skewness corrected for the sample size; undefined below three values. */
  G1: number | undefined;
  /** Excess kurtosis of the moments, m4/m2^2 - 3. Above zero: heavier tails than the normal. */
  g2: number;
  /** Excess kurtosis corrected for the sample size; undefined below four values. */
  G2: number | undefined;
};

/**
 * Skewness and excess kurtosis, from moments about the mean m_k = sum (x - m)^k / n.
 *
 * G1 = g1 sqrt(n(n-1))/(n-2); G2 = ((n+1) g2 + 6)(n-1)/((n-2)(n-3)). Cost: O(n).
 * Source: [joanes-gill-1998].
 *
 * @throws {MathsInputError} `shape/too-few`, `shape/no-spread`, `mean/value`
 */
export function shape(values: ArrayLike<number>): Shape {
  const n = values.length;
  requireCount('shape', 'shape', n, 2);
  const { mean, squares } = centred(values);
  requireSpread('shape', 'shape', squares);
  let cubes = 0;
  let fourths = 0;
  for (let i = 0; i < n; i += 1) {
    const off = values[i]! - mean;
    const square = off * off;
    cubes += square * off;
    fourths += square * square;
  }
  const m2 = squares / n;
  const g1 = cubes / n / m2 ** 1.5;
  const g2 = fourths / n / (m2 * m2) - 3;
  return {
    g1,
    G1: n < 3 ? undefined : (g1 * Math.sqrt(n * (n - 1))) / (n - 2),
    g2,
    G2: n < 4 ? undefined : (((n + 1) * g2 + 6) * (n - 1)) / ((n - 2) * (n - 3)),
  };
}
