import { refuse } from './guards';
import type { OneLimitPm } from './one-sided-zone';

/**
 * The line between green and yellow for a size with one limit: half way from the best size to it, pm.
 *
 * May be half a picometre. Cost: O(1). Source: common practice, no source.
 *
 * @throws {MathsInputError} `one-sided-line/limits`
 *
 * @example
 * oneSidedLine({ bestPm: 0, limitPm: 20 }); // 10
 */
export function oneSidedLine({ bestPm, limitPm }: OneLimitPm): number {
  if (!(Number.isSafeInteger(bestPm) && Number.isSafeInteger(limitPm) && bestPm !== limitPm)) {
    const got = `${bestPm} and ${limitPm} pm`;
    throw refuse('oneSidedLine', 'limits', `a limit away from the best size, got ${got}`);
  }
  return bestPm / 2 + limitPm / 2;
}
