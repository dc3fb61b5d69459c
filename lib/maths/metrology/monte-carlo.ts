import { MathsInputError } from '../check';
import { centred } from '../statistics/centred';
import { coverageInterval, type CoverageInterval } from './coverage-interval';
import type { Distribution } from './distribution';
import { sampler, type Sampler } from './sampler';
import { seededRandom } from './seeded-random';
import type { Model } from './sensitivities';
import { sortedDraws } from './sorted-draws';

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
 * Cost: O(draws x inputs) and a sort; about a fifth of a second for 10^6 draws of ten inputs.
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
  return summedUp(sortedDraws(drawn(model, sources, draws)), seed, coverage);
}

/** The figures of drawn results in rising order. */
export function summedUp(sorted: Float64Array, seed: number, coverage: number): MonteCarloResult {
  const { mean, squares } = centred(sorted);
  return {
    value: mean,
    u: Math.sqrt(squares / (sorted.length - 1)),
    symmetric: coverageInterval(sorted, coverage, 'symmetric'),
    shortest: coverageInterval(sorted, coverage, 'shortest'),
    draws: sorted.length,
    seed,
    generator: 'xoshiro128**',
    sorted,
  };
}

/** Results of the model for draws of its inputs, in the order drawn: 500 of each input at a time. */
export function drawn(model: Model, sources: readonly Sampler[], draws: number): Float64Array {
  const results = new Float64Array(draws);
  const inputs = new Float64Array(sources.length * atATime);
  const columns = sources.map((_, j) => inputs.subarray(j * atATime, (j + 1) * atATime));
  for (let from = 0; from < draws; from += atATime) {
    sources.forEach((fill, j) => fill(columns[j]!));
    evaluate(model, inputs, results.subarray(from, from + atATime));
  }
  return results;
}

const atATime = 500;

function evaluate(model: Model, inputs: Float64Array, results: Float64Array): void {
  const count = inputs.length / atATime;
  const values = Array.from({ length: count }, () => 0);
  for (let i = 0; i < results.length; i += 1) {
    for (let j = 0; j < count; j += 1) values[j] = inputs[j * atATime + i]!;
    const result = model(values);
    if (!Number.isFinite(result)) {
      throw new MathsInputError(
        'monte-carlo/model',
        `monteCarlo requires a model with a value for every draw, got ${result} at ${values.join(', ')}`,
      );
    }
    results[i] = result;
  }
}
