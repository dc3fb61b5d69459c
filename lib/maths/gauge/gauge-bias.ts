import { studentTUpperTail } from '../distributions/student-t-upper-tail';
import { studentTQuantile } from '../distributions/student-t-quantile';
import { requireAtLeast, requireConfidence, requireFinite } from '../control/guards';
import type { Interval } from '../control/interval';
import { mean } from '../statistics/mean';
import { standardDeviation } from '../statistics/standard-deviation';

export type GaugeBias = {
  count: number;
  /** Mean reading less the reference; add its opposite to correct. */
  bias: number;
  /** Standard deviation of one reading, and standard error of the bias. */
  sd: number;
  se: number;
  degreesOfFreedom: number;
  interval: Interval;
  /** bias / se and its two-sided chance. Left out when every reading is the same. */
  t?: number;
  p?: number;
};

/**
 * Bias of a gauge at one reference: b = mean - reference, se = s / sqrt n, t = b / se with n - 1.
 *
 * Limits: independent repeats; the doubt of the reference itself is not in `se`. Cost: O(n).
 * Sources: [aiag-msa] (from memory), [jcgm-100] 4.2.
 *
 * @throws {MathsInputError} `gauge-bias/too-few`, `gauge-bias/not-finite`, `gauge-bias/confidence`
 *
 * @example
 * gaugeBias([10.001, 10.003, 10.002], 10, 0.95).bias; // ~ 0.002
 */
export function gaugeBias(
  readings: readonly number[],
  reference: number,
  confidence: number,
): GaugeBias {
  requireAtLeast('gaugeBias', 'readings', readings.length, 2);
  requireFinite('gaugeBias', 'readings', readings);
  requireFinite('gaugeBias', 'reference', [reference]);
  requireConfidence('gaugeBias', confidence);
  const count = readings.length;
  const off = readings.map((reading) => reading - reference);
  const bias = mean(off);
  const sd = standardDeviation(off);
  const se = sd / Math.sqrt(count);
  const degreesOfFreedom = count - 1;
  const half = studentTQuantile((1 + confidence) / 2, degreesOfFreedom) * se;
  const plain = {
    count,
    bias,
    sd,
    se,
    degreesOfFreedom,
    interval: { low: bias - half, high: bias + half },
  };
  if (se === 0) return plain;
  const t = bias / se;
  return { ...plain, t, p: 2 * studentTUpperTail(Math.abs(t), degreesOfFreedom) };
}
