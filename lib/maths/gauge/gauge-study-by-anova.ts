import { crossedAnova, type CrossedAnova } from './crossed-anova';
import { gaugeShares, type GaugeShares } from './gauge-shares';
import type { StudyReadings } from './study-shape';

export type Spread = {
  repeatability: number;
  operator: number;
  interaction: number;
  /** Operator and interaction together. */
  reproducibility: number;
  /** Repeatability and reproducibility together. */
  gauge: number;
  part: number;
  total: number;
};

export type GaugeComponents = {
  variance: Spread;
  sd: Spread;
  /** Components that came out below zero and are given as 0. */
  setToZero: ('operator' | 'interaction' | 'part')[];
} & GaugeShares;

export type AnovaStudy = {
  table: CrossedAnova;
  /** Interaction kept apart. */
  withInteraction: GaugeComponents;
  /** Interaction counted with the repeats. */
  interactionPooled: GaugeComponents;
  /** Which of the two to use: pooled when the interaction's chance is above 0.25. */
  use: 'withInteraction' | 'interactionPooled';
};

/** Above this chance the interaction is counted with the repeats: common practice, no source. */
const poolAbove = 0.25;

/**
 * Gauge study by analysis of variance: repeatability, reproducibility, and what the parts vary.
 *
 *     repeatability MS_e,  interaction (MS_po - MS_e) / r,  operator (MS_o - MS_po) / (p r),
 *     part (MS_p - MS_po) / (o r);  pooled: MS_e' = (SS_po + SS_e) / (df_po + df_e) for MS_e and MS_po
 *
 * A variance that comes out negative is given as 0 and named in `setToZero`.
 *
 * Limits: as of `crossedAnova`; with two or three operators reproducibility is known poorly.
 * Cost: O(readings). Sources: [iso-22514-7], [aiag-msa] (from memory), [montgomery-sqc].
 *
 * @throws {MathsInputError} `crossed-anova/too-few`, `crossed-anova/shape`,
 *   `crossed-anova/not-finite`, `gauge-shares/not-positive`
 *
 * @example
 * gaugeStudyByAnova([[[1, 2], [1, 2]], [[5, 6], [5, 7]]], 20).use; // 'interactionPooled'
 */
export function gaugeStudyByAnova(readings: StudyReadings, tolerance?: number): AnovaStudy {
  const table = crossedAnova(readings);
  const { interaction, repeatability } = table;
  const pooledMs =
    (interaction.sumOfSquares + repeatability.sumOfSquares) /
    (interaction.degreesOfFreedom + repeatability.degreesOfFreedom);
  return {
    table,
    withInteraction: components(table, {
      repeats: repeatability.meanSquare,
      interaction: interaction.meanSquare,
      tolerance,
    }),
    interactionPooled: components(table, { repeats: pooledMs, interaction: pooledMs, tolerance }),
    use: (interaction.p ?? 0) > poolAbove ? 'interactionPooled' : 'withInteraction',
  };
}

type MeanSquares = { repeats: number; interaction: number; tolerance: number | undefined };

function components(table: CrossedAnova, meanSquares: MeanSquares): GaugeComponents {
  const { parts, operators, trials } = table;
  const { repeats, tolerance } = meanSquares;
  const raw = {
    operator: (table.operator.meanSquare - meanSquares.interaction) / (parts * trials),
    interaction: (meanSquares.interaction - repeats) / trials,
    part: (table.part.meanSquare - meanSquares.interaction) / (operators * trials),
  };
  const operator = Math.max(0, raw.operator);
  const interaction = Math.max(0, raw.interaction);
  const part = Math.max(0, raw.part);
  const reproducibility = operator + interaction;
  const gauge = repeats + reproducibility;
  const variance: Spread = {
    repeatability: repeats,
    operator,
    interaction,
    reproducibility,
    gauge,
    part,
    total: gauge + part,
  };
  const sd = Object.fromEntries(
    Object.entries(variance).map(([name, value]) => [name, Math.sqrt(value)]),
  ) as Spread;
  return {
    variance,
    sd,
    setToZero: (['operator', 'interaction', 'part'] as const).filter((name) => raw[name] < 0),
    ...gaugeShares({
      gauge: sd.gauge,
      part: sd.part,
      ...(tolerance !== undefined && { tolerance }),
    }),
  };
}
