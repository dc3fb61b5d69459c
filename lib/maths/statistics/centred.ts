import { refuseSum } from './guards';
import { sampledCentre } from './sampled-centre';
import { sumOff } from './sum-off';

/**
 * The mean and the sum of squares about it, in two passes. With m the mean as first rounded,
 * S = sum (x - m)^2 - (sum (x - m))^2/n, and sum (x - m)/n completes the mean.
 *
 * For many values m is the mean of a few hundred of them, which spares the first pass, wherever the
 * second term then takes less than a hundredth off the first.
 *
 * Cost: O(n). Source: [chan-1983].
 *
 * @throws {MathsInputError} `mean/too-few`, `mean/value`
 */
export function centred(values: ArrayLike<number>): { mean: number; squares: number } {
  const n = values.length;
  if (n >= 10_000) {
    const { centre } = sampledCentre(values);
    const { left, squares } = about(values, centre);
    const less = (left * left) / n;
    // False for no number as well: the passes below say what is wrong.
    if (less <= squares / 100 && squares < Infinity) {
      return { mean: centre + left / n, squares: squares - less };
    }
  }
  const first = sumOff(values, 0) / n;
  if (!Number.isFinite(first)) refuseSum('mean', 'mean', values);
  const { left, squares } = about(values, first);
  return { mean: first + left / n, squares: Math.max(0, squares - (left * left) / n) };
}

/** Sums of the differences from m and of their squares, by pairs in two strands. */
function about(values: ArrayLike<number>, m: number): { left: number; squares: number } {
  const n = values.length;
  const even = n - (n % 4);
  let squaresA = 0;
  let squaresB = 0;
  let leftA = 0;
  let leftB = 0;
  for (let i = 0; i < even; i += 4) {
    const a = values[i]! - m;
    const b = values[i + 1]! - m;
    const c = values[i + 2]! - m;
    const d = values[i + 3]! - m;
    squaresA += a * a + b * b;
    squaresB += c * c + d * d;
    leftA += a + b;
    leftB += c + d;
  }
  for (let i = even; i < n; i += 1) {
    const last = values[i]! - m;
    squaresA += last * last;
    leftA += last;
  }
  return { left: leftA + leftB, squares: squaresA + squaresB };
}
