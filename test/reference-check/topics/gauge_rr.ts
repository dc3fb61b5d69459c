import type { AnovaRow } from '@/lib/maths/gauge/crossed-anova';
import { d2Star } from '@/lib/maths/gauge/d2-star';
import { gaugeShares } from '@/lib/maths/gauge/gauge-shares';
import { gaugeSpreadFromRanges } from '@/lib/maths/gauge/gauge-spread-from-ranges';
import { gaugeStudyByAnova, type GaugeComponents } from '@/lib/maths/gauge/gauge-study-by-anova';
import { gaugeStudyByRange } from '@/lib/maths/gauge/gauge-study-by-range';
import type { StudyReadings } from '@/lib/maths/gauge/study-shape';

export const topic = 'Gauge repeatability and reproducibility';

type Summary = {
  trials: number;
  parts: number;
  r_bar: number[];
  x_bar: number[];
  /** Largest less smallest part mean, where it is kept. */
  part_range?: number;
};

export function answer(inputs: Record<string, unknown>): Record<string, unknown> {
  const tolerance = toleranceOf(inputs);
  if ('measurements' in inputs) return study(inputs.measurements as StudyReadings, tolerance);
  const { trials, parts, r_bar, x_bar, part_range } = inputs as Summary;
  const found = gaugeSpreadFromRanges({ parts, trials, rangeMeans: r_bar, readingMeans: x_bar });
  const part = part_range === undefined ? undefined : part_range / d2Star(parts, 1);
  const shares = gaugeShares({
    gauge: found.gauge,
    part: part ?? 0,
    ...(tolerance !== undefined && { tolerance }),
  });
  return {
    r_double_bar: found.rangeMean,
    x_diff: found.operatorDifference,
    EV: found.repeatability,
    AV: found.reproducibility,
    GRR: found.gauge,
    percent_GRR_of_tolerance: shares.percentOfTolerance,
    ...(part !== undefined && {
      PV: part,
      TV: Math.hypot(found.gauge, part),
      percent_GRR_of_TV: shares.percentOfTotal,
      ndc_unrounded: shares.distinctSizes,
      ndc: shares.distinctSizes === undefined ? null : Math.trunc(shares.distinctSizes),
    }),
  };
}

/** Upper less lower limit, as one figure or as the two limits. */
function toleranceOf(inputs: Record<string, unknown>): number | undefined {
  const { tolerance, lsl, usl } = inputs as Record<string, number | undefined>;
  return tolerance ?? (lsl === undefined || usl === undefined ? undefined : usl - lsl);
}

function study(readings: StudyReadings, tolerance?: number): Record<string, unknown> {
  const { table, withInteraction, interactionPooled } = gaugeStudyByAnova(readings, tolerance);
  const byRange = gaugeStudyByRange(readings, tolerance);
  return {
    anova: {
      part: row(table.part),
      operator: row(table.operator),
      interaction: row(table.interaction),
      repeatability: row(table.repeatability),
      total: { df: table.total.degreesOfFreedom, ss: table.total.sumOfSquares },
    },
    components_with_interaction: components(withInteraction),
    components_interaction_pooled: components(interactionPooled),
    average_and_range: {
      r_bar_by_operator: byRange.rangeMeans,
      r_double_bar: byRange.rangeMean,
      x_diff: byRange.operatorDifference,
      part_range: byRange.partRange,
      ucl_r: byRange.rangeUpper,
      EV: byRange.repeatability,
      AV: byRange.reproducibility,
      GRR: byRange.gauge,
      PV: byRange.part,
      TV: byRange.total,
      percent_GRR_of_TV: byRange.percentOfTotal,
      ndc_unrounded: byRange.distinctSizes,
      ndc: byRange.distinctSizes === undefined ? null : Math.trunc(byRange.distinctSizes),
      percent_GRR_of_tolerance: byRange.percentOfTolerance,
    },
    ss: {
      part: table.part.sumOfSquares,
      operator: table.operator.sumOfSquares,
      interaction: table.interaction.sumOfSquares,
      repeatability: table.repeatability.sumOfSquares,
      total: table.total.sumOfSquares,
    },
  };
}

function row(found: AnovaRow): Record<string, unknown> {
  return {
    df: found.degreesOfFreedom,
    ss: found.sumOfSquares,
    ms: found.meanSquare,
    F: found.f,
    p: found.p,
  };
}

function components(found: GaugeComponents): Record<string, unknown> {
  return {
    variance: found.variance,
    sd: found.sd,
    percent_contribution_gauge: found.percentContribution,
    percent_study_variation_gauge: found.percentOfTotal,
    percent_tolerance_gauge: found.percentOfTolerance,
    ndc_unrounded: found.distinctSizes,
  };
}
