import { requireNotNegative, requirePositive } from '../control/guards';

export type GaugeSharesInput = {
  /** Standard deviations of the gauge (all of it) and of the parts, one unit. */
  gauge: number;
  part: number;
  /** Upper less lower limit, same unit. */
  tolerance?: number;
};

export type GaugeShares = {
  /** Gauge in the variance of everything, %, and in its standard deviation, %. Left out when all is 0. */
  percentContribution?: number;
  percentOfTotal?: number;
  /** Six standard deviations of the gauge in the tolerance, %. Left out without a tolerance. */
  percentOfTolerance?: number;
  /** sqrt(2) part / gauge: sizes the gauge can tell apart, unrounded. Left out when the gauge is 0. */
  distinctSizes?: number;
};

/**
 * How much of what is seen is the gauge, and how many sizes it can tell apart.
 *
 *     % of total = 100 s_gauge / sqrt(s_gauge^2 + s_part^2),  % of tolerance = 100 * 6 s_gauge / T
 *     distinct sizes = 1.4142 s_part / s_gauge
 *
 * Limits: shares of the total depend on the parts that were picked; the share of the tolerance does
 * not. Manuals truncate the number of sizes. Cost: O(1). Sources: [iso-22514-7], [aiag-msa] (from
 * memory).
 *
 * @throws {MathsInputError} `gauge-shares/negative`, `gauge-shares/not-positive`
 *
 * @example
 * gaugeShares({ gauge: 3, part: 4, tolerance: 36 });
 * // percentContribution 36, percentOfTotal 60, percentOfTolerance 50, distinctSizes ~ 1.886
 */
export function gaugeShares({ gauge, part, tolerance }: GaugeSharesInput): GaugeShares {
  requireNotNegative('gaugeShares', 'gauge', gauge);
  requireNotNegative('gaugeShares', 'part', part);
  if (tolerance !== undefined) requirePositive('gaugeShares', 'tolerance', tolerance);
  const total = Math.hypot(gauge, part);
  return {
    ...(total > 0 && {
      percentContribution: 100 * (gauge / total) ** 2,
      percentOfTotal: (100 * gauge) / total,
    }),
    ...(tolerance !== undefined && { percentOfTolerance: (100 * 6 * gauge) / tolerance }),
    ...(gauge > 0 && { distinctSizes: (Math.SQRT2 * part) / gauge }),
  };
}
