import { refuseSum } from './guards';
import { sampledCentre } from './sampled-centre';
import { sumOff } from './sum-off';

/**
 * Arithmetic mean, in two passes: a first figure, then the mean of what is left over is added.
 *
 * The second pass takes out the rounding of the first, so that large offsets keep all their digits.
 * The first figure is sum/n; for many values the mean of a few hundred of them, which spares the
 * first pass, wherever it comes as near the mean as those values are to each other.
 * Cost: O(n), one or two plain passes over numbers or a typed array. Source: [chan-1983].
 *
 * @throws {MathsInputError} `mean/too-few`, `mean/value`
 *
 * @example
 * mean([10.002, 10.004, 10.003]); // 10.003
 */
export function mean(values: ArrayLike<number>): number {
  const n = values.length;
  if (n >= 10_000) {
    const { centre, spread } = sampledCentre(values);
    const left = sumOff(values, centre) / n;
    if (Number.isFinite(left) && Math.abs(left) <= spread) return centre + left;
  }
  const first = sumOff(values, 0) / n;
  if (!Number.isFinite(first)) refuseSum('mean', 'mean', values);
  return first + sumOff(values, first) / n;
}
