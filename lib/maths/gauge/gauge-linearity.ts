import { studentTQuantile } from '../distributions/student-t-quantile';
import { studentTUpperTail } from '../distributions/student-t-upper-tail';
import { refuse, requireAtLeast, requireConfidence, requireFinite } from '../control/guards';
import { leastSquaresLine, type Line } from '../control/least-squares-line';
import { mean } from '../statistics/mean';

export type LinearityInput = {
  /** Sizes of the reference pieces, two or more different ones. */
  references: readonly number[];
  /** Readings of each of them: as many lists as references, one or more readings in each. */
  readings: readonly (readonly number[])[];
  /** Two-sided. */
  confidence: number;
};

export type GaugeLinearity = {
  /** Bias against reference; ask `lineAt` and `lineBand` for the correction and its doubt. */
  line: Line;
  /** Mean reading less the reference, for each reference. */
  meanBias: number[];
  /** Share of the biases' variation that the line explains. Left out when all biases are the same. */
  rSquared?: number;
  /** Slope and intercept over their standard errors, with chances. Left out without any scatter. */
  tSlope?: number;
  tIntercept?: number;
  pSlope?: number;
  pIntercept?: number;
  /** What |t| must pass at the stated confidence. */
  tCritical: number;
};

/**
 * Linearity of a gauge: how its bias changes with size.
 *
 *     line through (reference, reading - reference) for every reading;  t = slope / se(slope), n - 2
 *
 * Limits: as of `leastSquaresLine`; look whether the mean biases lie along a line at all, since an error
 * that comes back every turn of a screw does not. Cost: O(readings). Sources: [aiag-msa] (from
 * memory), [draper-smith].
 *
 * @throws {MathsInputError} `gauge-linearity/too-few`, `gauge-linearity/lengths`,
 *   `gauge-linearity/not-finite`, `gauge-linearity/confidence`, `least-squares-line/too-few`,
 *   `least-squares-line/one-x`
 *
 * @example
 * gaugeLinearity({
 *   references: [5, 10], readings: [[5.001, 5.002], [10.003, 10.004]], confidence: 0.95,
 * }).line.slope; // ~ 0.0004
 */
export function gaugeLinearity(input: LinearityInput): GaugeLinearity {
  const { references, readings, confidence } = input;
  if (readings.length !== references.length) {
    const got = `${references.length} and ${readings.length}`;
    throw refuse('gaugeLinearity', 'lengths', `readings for each reference, got ${got}`);
  }
  requireFinite('gaugeLinearity', 'references', references);
  requireConfidence('gaugeLinearity', confidence);
  const biases = readings.map((list, i) => {
    requireAtLeast('gaugeLinearity', `readings of reference ${i}`, list.length, 1);
    requireFinite('gaugeLinearity', `readings of reference ${i}`, list);
    return list.map((reading) => reading - references[i]!);
  });
  const line = leastSquaresLine(
    biases.flatMap((list, i) => list.map(() => references[i]!)),
    biases.flat(),
  );
  const { degreesOfFreedom, residualSd, sumSquaresY } = line;
  const result = {
    line,
    meanBias: biases.map((list) => mean(list)),
    tCritical: studentTQuantile((1 + confidence) / 2, degreesOfFreedom),
    ...(sumSquaresY > 0 && {
      rSquared: 1 - (residualSd ** 2 * degreesOfFreedom) / sumSquaresY,
    }),
  };
  if (residualSd === 0) return result;
  const tSlope = line.slope / line.slopeSe;
  const tIntercept = line.intercept / line.interceptSe;
  const chance = (t: number) => 2 * studentTUpperTail(Math.abs(t), degreesOfFreedom);
  return { ...result, tSlope, tIntercept, pSlope: chance(tSlope), pIntercept: chance(tIntercept) };
}
