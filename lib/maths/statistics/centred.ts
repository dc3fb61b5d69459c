import { refuseSum } from './guards';
import { sumOff } from './sum-off';

/**
 * The mean and the sum of squares about it, in two passes. With m the mean as first rounded,
 * S = sum (x - m)^2 - (sum (x - m))^2/n, and sum (x - m)/n completes the mean.
 *
 * Cost: O(n). Source: [chan-1983].
 *
 * @throws {MathsInputError} `mean/too-few`, `mean/value`
 */
export function centred(values: ArrayLike<number>): { mean: number; squares: number } {
  const n = values.length;
  const first = sumOff(values, 0) / n;
  if (!Number.isFinite(first)) refuseSum('mean', 'mean', values);
  const even = n - (n % 2);
  let squaresA = 0;
  let squaresB = 0;
  let leftA = 0;
  let leftB = 0;
  for (let i = 0; i < even; i += 2) {
    const a = values[i]! - first;
    const b = values[i + 1]! - first;
    squaresA += a * a;
    squaresB += b * b;
    leftA += a;
    leftB += b;
  }
  if (even < n) {
    const last = values[even]! - first;
    squaresA += last * last;
    leftA += last;
  }
  const left = leftA + leftB;
  return {
    mean: first + left / n,
    squares: Math.max(0, squaresA + squaresB - (left * left) / n),
  };
}
