import { MathsInputError } from '../check';
import { mean } from '../statistics/mean';
import { standardDeviation } from '../statistics/standard-deviation';
import { coverageInterval, type CoverageInterval } from './coverage-interval';
import type { Distribution } from './distribution';
import { sampler } from './sampler';
import { seededRandom } from './seeded-random';
import type { Model } from './sensitivities';

export type MonteCarloResult = {
  value: number;
  u: number;
  symmetric: CoverageInterval;
  shortest: CoverageInterval;
  /** What the result rests on, to be kept with it. */
  draws: number;
  seed: number;
  generator: 'xoshiro128**';
  /** All drawn results in rising order. */
  sorted: Float64Array;
};

/**
 * Propagation of distributions through a model with a fixed number of draws.
 *
 * The inputs are independent. The same seed gives the same result to the last digit. With 10^6 draws u
 * is good to about 0.1 % and the ends of a 95 % interval to about 0.3 % of u.
 * Cost: O(draws x inputs) and a sort; about a second for 10^6 draws of ten inputs.
 * Source: [jcgm-101] 7.
 *
 * `values` handed to the model is one array used again and again: do not keep it.
 *
 * @throws {MathsInputError} `monte-carlo/draws`, `monte-carlo/model`, and those of `sampler`,
 *   `seededRandom` and `coverageInterval`
 *
 * @example
 * monteCarlo(([a, b]) => a! + b!, [
 *   { shape: 'normal', mean: 0, sd: 1 }, { shape: 'rectangular', low: -1, high: 1 }],
 *   { draws: 1_000_000, seed: 1, coverage: 0.95 });
 */
export function monteCarlo(
  model: Model,
  inputs: readonly Distribution[],
  { draws, seed, coverage }: { draws: number; seed: number; coverage: number },
): MonteCarloResult {
  if (!(Number.isInteger(draws) && draws >= 100 && draws <= 20_000_000)) {
    throw new MathsInputError(
      'monte-carlo/draws',
      `monteCarlo requires 100 to 20000000 draws, got ${draws}`,
    );
  }
  const random = seededRandom(seed);
  const sources = inputs.map((input) => sampler(input, random));
  const sorted = drawn(model, sources, draws).sort();
  return {
    value: mean(sorted),
    u: standardDeviation(sorted),
    symmetric: coverageInterval(sorted, coverage, 'symmetric'),
    shortest: coverageInterval(sorted, coverage, 'shortest'),
    draws,
    seed,
    generator: 'xoshiro128**',
    sorted,
  };
}

/** Results of the model for draws of its inputs, in the order drawn. */
export function drawn(
  model: Model,
  sources: readonly (() => number)[],
  draws: number,
): Float64Array {
  const results = new Float64Array(draws);
  const values: number[] = sources.map(() => 0);
  for (let i = 0; i < draws; i += 1) {
    for (let j = 0; j < sources.length; j += 1) values[j] = sources[j]!();
    const result = model(values);
    if (!Number.isFinite(result)) {
      throw new MathsInputError(
        'monte-carlo/model',
        `monteCarlo requires a model with a value for every draw, got ${result} at ${values.join(', ')}`,
      );
    }
    results[i] = result;
  }
  return results;
}
