import { centred } from './centred';
import { grubbsCritical } from './grubbs-critical';
import { requireSpread, requireValues } from './guards';

export type GrubbsResult = {
  /** Distance of the farthest value from the mean, in standard deviations. */
  g: number;
  critical: number;
  /** Where the farthest value stands, from 0. */
  index: number;
  isOutlier: boolean;
};

/**
 * Grubbs' test of the value farthest from the mean, on either side or on one.
 *
 * G = |x - m|/s against `grubbsCritical`. Finds one outlier, and hides it when there are two alike;
 * supposes the rest normal. Never a reason to delete: ask, and keep the value. At least 3 values.
 * Cost: O(n). Source: [nist-handbook] 1.3.5.17.1, [iso-5725-2].
 *
 * @throws {MathsInputError} `grubbs-test/too-few`, `grubbs-test/value`, `grubbs-test/no-spread`,
 *   `grubbs-critical/significance`
 *
 * @example
 * grubbsTest([199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57], 0.05, 'largest');
 * // g 2.4688 > critical 2.0317, index 7
 */
export function grubbsTest(
  values: readonly number[],
  significance: number,
  side: 'either' | 'largest' | 'smallest',
): GrubbsResult {
  requireValues('grubbsTest', 'grubbs-test', values, 3);
  const { mean, squares } = centred(values);
  requireSpread('grubbsTest', 'grubbs-test', squares);
  const distance = (value: number) => {
    if (side === 'either') return Math.abs(value - mean);
    return side === 'largest' ? value - mean : mean - value;
  };
  let index = 0;
  values.forEach((value, i) => {
    if (distance(value) > distance(values[index]!)) index = i;
  });
  const g = distance(values[index]!) / Math.sqrt(squares / (values.length - 1));
  const critical = grubbsCritical(values.length, significance, side === 'either' ? 'two' : 'one');
  return { g, critical, index, isOutlier: g > critical };
}
