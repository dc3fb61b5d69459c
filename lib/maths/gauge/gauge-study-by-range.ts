import { controlChartConstants } from '../control/control-chart-constants';
import { mean } from '../statistics/mean';
import { d2Star } from './d2-star';
import { gaugeShares, type GaugeShares } from './gauge-shares';
import { gaugeSpreadFromRanges, type RangeSpread } from './gauge-spread-from-ranges';
import { studyShape, type StudyReadings } from './study-shape';

export type RangeStudy = RangeSpread & {
  /** Mean range of each operator's repeats. */
  rangeMeans: number[];
  /** Upper limit for a single range; a range beyond it is a slip or a part that would not sit. */
  rangeUpper: number;
  /** Part (from 0) and operator (from 0) of each range beyond that limit. */
  rangesOutside: { part: number; operator: number }[];
  /** Largest less smallest part mean. */
  partRange: number;
  /** Parts alone, and everything together, as standard deviations. */
  part: number;
  total: number;
} & GaugeShares;

/**
 * Gauge study by averages and ranges, every operator measuring every part several times.
 *
 *     EV, AV and GRR as in `gaugeSpreadFromRanges`;  PV = Rp K3(parts), K3 = 1 / d2*(parts, 1)
 *     TV = sqrt(GRR^2 + PV^2);  upper limit of a range D4(trials) Rbb
 *
 * Limits: parts and trials up to 100; parts should span the size that is made. Operators who disagree
 * about some parts only are not seen; `gaugeStudyByAnova` sees them. Cost: O(readings).
 * Sources: [iso-22514-7], [aiag-msa] (from memory).
 *
 * @throws {MathsInputError} `gauge-study-by-range/too-few`, `gauge-study-by-range/shape`,
 *   `gauge-study-by-range/not-finite`, `gauge-shares/not-positive`
 *
 * @example
 * gaugeStudyByRange([[[1, 2], [1, 2]], [[5, 6], [5, 7]]]).repeatability; // ~ 1.108
 */
export function gaugeStudyByRange(readings: StudyReadings, tolerance?: number): RangeStudy {
  const { parts, operators, trials } = studyShape('gaugeStudyByRange', readings);
  const each = Array.from({ length: operators }, (_, o) => readings.map((part) => part[o]!));
  const rangeMeans = each.map((cells) => mean(cells.map(spread)));
  const summary = gaugeSpreadFromRanges({
    parts,
    trials,
    rangeMeans,
    readingMeans: each.map((cells) => mean(cells.flat())),
  });
  const rangeUpper = controlChartConstants(trials).D4 * summary.rangeMean;
  const partRange = spread(readings.map((part) => mean(part.flat())));
  const part = partRange / d2Star(parts, 1);
  const total = Math.hypot(summary.gauge, part);
  return {
    ...summary,
    rangeMeans,
    rangeUpper,
    rangesOutside: readings.flatMap((byOperator, p) =>
      byOperator.flatMap((cell, o) =>
        spread(cell) > rangeUpper ? [{ part: p, operator: o }] : [],
      ),
    ),
    partRange,
    part,
    total,
    ...gaugeShares({ gauge: summary.gauge, part, ...(tolerance !== undefined && { tolerance }) }),
  };
}

function spread(values: readonly number[]): number {
  return Math.max(...values) - Math.min(...values);
}
