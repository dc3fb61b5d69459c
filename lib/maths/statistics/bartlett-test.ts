import { MathsInputError } from '../check';
import { chiSquareUpperTail } from '../distributions/chi-square-upper-tail';
import { pooledStandardDeviation, type SpreadOfSet } from './pooled-standard-deviation';

/**
 * Bartlett's test that several normal sets share one spread.
 *
 * T = (N ln s_p^2 - sum nu_i ln s_i^2) / C with N = sum nu_i and
 * C = 1 + (sum 1/nu_i - 1/N)/(3(k-1)), against chi-square of k - 1. A small p says they differ; it also
 * says so when the sets are not normal. Cost: O(sets). Source: [nist-handbook] 1.3.5.7.
 *
 * @throws {MathsInputError} `bartlett-test/too-few`, `bartlett-test/no-spread`
 */
export function bartlettTest(sets: readonly SpreadOfSet[]): { statistic: number; p: number } {
  if (sets.length < 2) {
    throw new MathsInputError(
      'bartlett-test/too-few',
      `bartlettTest requires at least two sets, got ${sets.length}`,
    );
  }
  const still = sets.findIndex(({ sd, degrees }) => !(sd > 0 && degrees > 0));
  if (still >= 0) {
    throw new MathsInputError(
      'bartlett-test/no-spread',
      `bartlettTest requires a spread above zero in every set, got none at index ${still}`,
    );
  }
  const { sd: pooled, degrees: all } = pooledStandardDeviation(sets);
  const extra = sets.reduce((sum, { degrees }) => sum + 1 / degrees, 0) - 1 / all;
  const correction = 1 + extra / (3 * (sets.length - 1));
  const statistic =
    sets.reduce((sum, { sd, degrees }) => sum + 2 * degrees * Math.log(pooled / sd), 0) /
    correction;
  return { statistic, p: chiSquareUpperTail(statistic, sets.length - 1) };
}
