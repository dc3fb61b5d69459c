import {
  refuse,
  requireAtLeast,
  requireFinite,
  requireNotNegative,
  requirePositive,
} from './guards';

export type EwmaInput = {
  /** Readings, or means of subgroups, in the order made. */
  values: readonly number[];
  /** Weight of the newest value, above 0 and at most 1; small weights see small shifts. */
  lambda: number;
  /** Where the average starts and the chart is centred: the aim, or a mean from before. */
  centre: number;
  /** Standard deviation of one of the values: sigma / sqrt n for means of n. */
  sigma: number;
  /** Half-width of the limits in standard deviations of the average, often 3. */
  multiple: number;
  /** `settled` limits are those of a long run; `from the start` are narrower for the first points. */
  limits: 'settled' | 'from the start';
};

export type EwmaChart = {
  /** One weighted average, lower limit and upper limit for each value. */
  averages: number[];
  lower: number[];
  upper: number[];
  /** Indices (from 0) of the averages strictly beyond their limits. */
  outside: number[];
};

/**
 * Exponentially weighted moving average, with its limits.
 *
 *     z_0 = centre,  z_i = lambda x_i + (1 - lambda) z_(i-1)
 *     limits centre +- L sigma sqrt(lambda / (2 - lambda) (1 - (1 - lambda)^(2 i)))
 *
 * without the last bracket for settled limits. Limits: independent values with one known sigma.
 * Cost: O(n). Sources: [iso-7870-6], [montgomery-sqc] chapter 9.
 *
 * @throws {MathsInputError} `ewma-chart/too-few`, `ewma-chart/not-finite`, `ewma-chart/lambda`,
 *   `ewma-chart/negative`, `ewma-chart/not-positive`
 *
 * @example
 * ewmaChart({
 *   values: [52, 47], lambda: 0.3, centre: 50, sigma: 2, multiple: 3, limits: 'settled',
 * }).averages; // ~ [50.6, 49.52]
 */
export function ewmaChart(input: EwmaInput): EwmaChart {
  const { values, lambda, centre, sigma, multiple, limits } = input;
  requireAtLeast('ewmaChart', 'values', values.length, 1);
  requireFinite('ewmaChart', 'values', values);
  requireFinite('ewmaChart', 'centre', [centre]);
  if (!(lambda > 0 && lambda <= 1)) {
    throw refuse('ewmaChart', 'lambda', `a lambda above 0 and at most 1, got ${lambda}`);
  }
  requireNotNegative('ewmaChart', 'sigma', sigma);
  requirePositive('ewmaChart', 'multiple', multiple);

  const settled = multiple * sigma * Math.sqrt(lambda / (2 - lambda));
  const chart: EwmaChart = { averages: [], lower: [], upper: [], outside: [] };
  let average = centre;
  let forgotten = 1;
  values.forEach((value, i) => {
    average = lambda * value + (1 - lambda) * average;
    forgotten *= (1 - lambda) ** 2;
    const half = limits === 'settled' ? settled : settled * Math.sqrt(1 - forgotten);
    chart.averages.push(average);
    chart.lower.push(centre - half);
    chart.upper.push(centre + half);
    if (Math.abs(average - centre) > half) chart.outside.push(i);
  });
  return chart;
}
