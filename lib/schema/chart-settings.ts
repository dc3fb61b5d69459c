/**
 * The settings of the weighted average and of the sums, in thousandths, each from its least to its most, with the
 * value a run starts with. No zod here: screens read it.
 *
 * Usual values: Montgomery, Statistical Quality Control, chapter 9, from memory: weights of 0.05 to 0.25 and
 * limits at 2.6 to 3 sigma; a reference value of half a sigma, a decision interval of four or five. How far they
 * may be set is common practice, no source.
 */
export const chartSettings = {
  /** Weight of the newest value in the average. */
  averageWeightMilli: { least: 10, most: 1000, usual: 200 },
  /** Half-width of its limits, in standard deviations of the average. */
  averageWidthMilli: { least: 1000, most: 6000, usual: 3000 },
  /** Reference value of the sums: what is taken off each time, in standard deviations of what is summed. */
  sumReferenceMilli: { least: 100, most: 3000, usual: 500 },
  /** Decision interval of the sums, in the same. */
  sumDecisionMilli: { least: 1000, most: 20_000, usual: 5000 },
} as const;

export type ChartSetting = keyof typeof chartSettings;

/** What a run starts with. */
export const usualChartSettings: Record<ChartSetting, number> = {
  averageWeightMilli: chartSettings.averageWeightMilli.usual,
  averageWidthMilli: chartSettings.averageWidthMilli.usual,
  sumReferenceMilli: chartSettings.sumReferenceMilli.usual,
  sumDecisionMilli: chartSettings.sumDecisionMilli.usual,
};
