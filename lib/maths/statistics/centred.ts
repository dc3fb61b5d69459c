import { mean } from './mean';

/**
 * The mean and the sum of squares about it, corrected for what the mean's rounding left:
 * S = sum (x - m)^2 - (sum (x - m))^2/n.
 *
 * The number of values is taken as checked. Cost: O(n). Source: [chan-1983].
 *
 * @throws {MathsInputError} `mean/too-few`, `mean/value`
 */
export function centred(values: ArrayLike<number>): { mean: number; squares: number } {
  const n = values.length;
  const middle = mean(values);
  const even = n - (n % 2);
  let squaresA = 0;
  let squaresB = 0;
  let left = 0;
  for (let i = 0; i < even; i += 2) {
    const a = values[i]! - middle;
    const b = values[i + 1]! - middle;
    squaresA += a * a;
    squaresB += b * b;
    left += a + b;
  }
  if (even < n) {
    const last = values[even]! - middle;
    squaresA += last * last;
    left += last;
  }
  return { mean: middle, squares: Math.max(0, squaresA + squaresB - (left * left) / n) };
}
