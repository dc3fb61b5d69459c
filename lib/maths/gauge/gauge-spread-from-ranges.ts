import { rangeMoments } from '../control/range-moments';
import { refuse, requireAtLeast, requireFinite, requireWhole } from '../control/guards';
import { d2Star } from './d2-star';

export type RangeSummary = {
  parts: number;
  trials: number;
  /** Mean range of each operator's repeats, and mean of all of each operator's readings. */
  rangeMeans: readonly number[];
  readingMeans: readonly number[];
};

export type RangeSpread = {
  /** Mean of the operators' mean ranges. */
  rangeMean: number;
  /** Largest less smallest operator mean. */
  operatorDifference: number;
  /** Repeatability, reproducibility and both together, as standard deviations. */
  repeatability: number;
  reproducibility: number;
  gauge: number;
  /** True when the operators differed no more than repeats explain, so reproducibility became 0. */
  operatorsAlike: boolean;
};

/**
 * Repeatability and reproducibility from what is left of a study on paper: ranges and means.
 *
 *     EV = Rbb K1(trials),  AV = sqrt(max(0, (Xdiff K2(operators))^2 - EV^2 / (parts trials)))
 *     GRR = sqrt(EV^2 + AV^2),  K1 = 1 / d2,  K2 = 1 / d2*(operators, 1)
 *
 * Limits: takes no account of operators who disagree about some parts only; `crossedAnova` does.
 * Cost: O(operators). Sources: [iso-22514-7], [aiag-msa] (from memory).
 *
 * @throws {MathsInputError} `gauge-spread-from-ranges/too-few`, `gauge-spread-from-ranges/lengths`,
 *   `gauge-spread-from-ranges/not-finite`, `gauge-spread-from-ranges/not-whole`,
 *   `gauge-spread-from-ranges/negative`
 *
 * @example
 * gaugeSpreadFromRanges({ parts: 10, trials: 2, rangeMeans: [2, 3], readingMeans: [201, 205] });
 * // repeatability ~ 2.216, reproducibility ~ 2.785, gauge ~ 3.559
 */
export function gaugeSpreadFromRanges(summary: RangeSummary): RangeSpread {
  const caller = 'gaugeSpreadFromRanges';
  const { parts, trials, rangeMeans, readingMeans } = summary;
  const operators = rangeMeans.length;
  requireAtLeast(caller, 'operators', operators, 2);
  if (readingMeans.length !== operators) {
    const got = `${operators} and ${readingMeans.length}`;
    throw refuse(caller, 'lengths', `one mean reading for each mean range, got ${got}`);
  }
  requireFinite(caller, 'mean ranges', rangeMeans);
  requireFinite(caller, 'mean readings', readingMeans);
  requireWhole(caller, 'number of parts', parts, 1, Infinity);
  requireWhole(caller, 'number of trials', trials, 2, 100);
  const wrong = rangeMeans.find((range) => range < 0);
  if (wrong !== undefined) {
    throw refuse(caller, 'negative', `mean ranges of zero or more, got ${wrong}`);
  }

  const rangeMean = rangeMeans.reduce((sum, range) => sum + range, 0) / operators;
  const operatorDifference = Math.max(...readingMeans) - Math.min(...readingMeans);
  const repeatability = rangeMean / rangeMoments(trials).d2;
  const betweenOperators =
    (operatorDifference / d2Star(operators, 1)) ** 2 - repeatability ** 2 / (parts * trials);
  const reproducibility = Math.sqrt(Math.max(0, betweenOperators));
  return {
    rangeMean,
    operatorDifference,
    repeatability,
    reproducibility,
    gauge: Math.hypot(repeatability, reproducibility),
    operatorsAlike: betweenOperators <= 0,
  };
}
