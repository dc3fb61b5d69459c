import { MathsInputError } from '../check';
import { mean } from '../statistics/mean';
import { standardDeviation } from '../statistics/standard-deviation';
import { coverageInterval } from './coverage-interval';
import type { Distribution } from './distribution';
import { drawn, summedUp, type MonteCarloResult } from './monte-carlo';
import { numericalTolerance } from './numerical-tolerance';
import { sampler } from './sampler';
import { seededRandom } from './seeded-random';
import type { Model } from './sensitivities';
import { sortedDraws } from './sorted-draws';

export type AdaptiveResult = MonteCarloResult & {
  /** False when `drawsMax` came first: the figures are then not settled. */
  isStable: boolean;
  /** What twice the standard deviation of each figure was brought below. */
  tolerance: number;
};

/**
 * Propagation of distributions with as many draws as the figures need.
 *
 * Blocks of M = max(100/(1-p), 10^4) draws. After each block from the second on: the standard
 * deviations, over the blocks, of the mean of y, u and both ends of the shortest interval. Ends when
 * twice each is at most half a unit of the last figure of u kept. The result is of all draws together.
 * Cost: as `monteCarlo`; stops at `drawsMax`, ten million unless told. Source: [jcgm-101] 7.9.4.
 *
 * @throws {MathsInputError} `adaptive-monte-carlo/no-spread`, and those of `monteCarlo`
 */
export function adaptiveMonteCarlo(
  model: Model,
  inputs: readonly Distribution[],
  options: { seed: number; coverage: number; figures?: 1 | 2; drawsMax?: number },
): AdaptiveResult {
  const { seed, coverage, figures = 2, drawsMax = 10_000_000 } = options;
  if (!(coverage > 0 && coverage < 1)) {
    throw new MathsInputError(
      'coverage-interval/part',
      `adaptiveMonteCarlo requires a coverage above 0 and below 1, got ${coverage}`,
    );
  }
  const random = seededRandom(seed);
  const sources = inputs.map((input) => sampler(input, random));
  const size = Math.max(Math.ceil(100 / (1 - coverage)), 10_000);
  const blocks: Float64Array[] = [];
  const figuresOf: number[][] = [];
  let tolerance = 0;
  let isStable = false;
  while (!isStable && (blocks.length < 2 || (blocks.length + 1) * size <= drawsMax)) {
    const block = sortedDraws(drawn(model, sources, size));
    const { low, high } = coverageInterval(block, coverage, 'shortest');
    blocks.push(block);
    figuresOf.push([mean(block), standardDeviation(block), low, high]);
    if (blocks.length < 2) continue;
    tolerance = numericalTolerance(spreadOf(blocks), figures);
    isStable = [0, 1, 2, 3].every((k) => {
      const spread = standardDeviation(figuresOf.map((row) => row[k]!));
      return (2 * spread) / Math.sqrt(blocks.length) <= tolerance;
    });
  }
  return { ...summedUp(together(blocks), seed, coverage), isStable, tolerance };
}

/** Standard deviation of all draws so far, from those of the blocks and their means. */
function spreadOf(blocks: readonly Float64Array[]): number {
  const size = blocks[0]!.length;
  const within = blocks.reduce((sum, block) => sum + standardDeviation(block) ** 2, 0);
  const means = blocks.map((block) => mean(block));
  const between = standardDeviation(means) ** 2 * (blocks.length - 1) * size;
  const u = Math.sqrt((within * (size - 1) + between) / (blocks.length * size - 1));
  if (u > 0) return u;
  throw new MathsInputError(
    'adaptive-monte-carlo/no-spread',
    'adaptiveMonteCarlo requires inputs that spread the result, got one result for all draws',
  );
}

function together(blocks: readonly Float64Array[]): Float64Array {
  const size = blocks[0]!.length;
  const all = new Float64Array(blocks.length * size);
  blocks.forEach((block, i) => all.set(block, i * size));
  return sortedDraws(all);
}
