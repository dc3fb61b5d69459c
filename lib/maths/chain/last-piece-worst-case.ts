import { MathsInputError } from '../check';
import { requireLinks, type Link } from './check-chain';
import { linearChain } from './linear-chain';

/**
 * Middle size of the last piece of a chain so that the closing link is never
 * less than wanted, every piece at its worst.
 *
 * closing middle = least + sum of all |a| t; last = (closing middle - middle of
 * the others)/a. Any one unit of length. Source: [shigley-9] example 1-3.
 *
 * @throws {MathsInputError} `last-piece-worst-case/no-link`, `.../link`, `.../last`
 *
 * @example
 * lastPieceWorstCase(links, { coefficient: -1, halfTolerance: 0.001 }, 0.003);
 * // lastMiddle 0.867, closingMiddle 0.013
 */
export function lastPieceWorstCase(
  others: readonly Link[],
  last: { coefficient: number; halfTolerance: number },
  leastClosing: number,
): { lastMiddle: number; closingMiddle: number } {
  requireLinks('last-piece-worst-case', 'lastPieceWorstCase', others);
  const { coefficient, halfTolerance } = last;
  const finite = [coefficient, halfTolerance, leastClosing].every(Number.isFinite);
  if (!finite || coefficient === 0 || halfTolerance < 0) {
    throw new MathsInputError(
      'last-piece-worst-case/last',
      `lastPieceWorstCase requires a coefficient other than zero and a half tolerance from zero up, got ${coefficient} and ${halfTolerance}`,
    );
  }
  const { middle, worstHalf } = linearChain(others);
  const closingMiddle = leastClosing + worstHalf + Math.abs(coefficient) * halfTolerance;
  return { lastMiddle: (closingMiddle - middle) / coefficient, closingMiddle };
}
