import type { AnovaRow } from '@/lib/maths/gauge/crossed-anova';
import { gaugeSpreadFromRanges } from '@/lib/maths/gauge/gauge-spread-from-ranges';
import { gaugeStudyByAnova, type GaugeComponents } from '@/lib/maths/gauge/gauge-study-by-anova';
import { gaugeStudyByRange } from '@/lib/maths/gauge/gauge-study-by-range';
import type { StudyReadings } from '@/lib/maths/gauge/study-shape';

export const topic = 'Gauge repeatability and reproducibility';

type Summary = { trials: number; parts: number; r_bar: number[]; x_bar: number[] };

export function answer(inputs: Record<string, unknown>): Record<string, unknown> {
  if ('measurements' in inputs) return study(inputs.measurements as StudyReadings);
  const { trials, parts, r_bar, x_bar } = inputs as Summary;
  const found = gaugeSpreadFromRanges({ parts, trials, rangeMeans: r_bar, readingMeans: x_bar });
  return { EV: found.repeatability, AV: found.reproducibility, GRR: found.gauge };
}

function study(readings: StudyReadings): Record<string, unknown> {
  const { table, withInteraction, interactionPooled } = gaugeStudyByAnova(readings);
  const byRange = gaugeStudyByRange(readings);
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
      ndc: Math.trunc(byRange.distinctSizes!),
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
    ndc_unrounded: found.distinctSizes,
  };
}
