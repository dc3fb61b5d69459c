import { refuse } from './guards';

/** One limit, and the size that would be best, in whole picometres. */
export type OneLimitPm = { bestPm: number; limitPm: number };

/**
 * Zone of a size that has one limit only, such as run-out or ovality.
 *
 * Green from the best value to half way to the limit (on it still green), yellow up to the limit (on it
 * still yellow), red beyond. A size on the other side of the best value is green.
 *
 * Limits: the half-way line is a convention of the trade; common practice, no source. Cost: O(1).
 *
 * @throws {MathsInputError} `one-sided-zone/not-whole`, `one-sided-zone/limits`
 *
 * @example
 * oneSidedZone({ bestPm: 0, limitPm: 20 }, 11); // 'yellow'
 */
export function oneSidedZone(
  { bestPm, limitPm }: OneLimitPm,
  sizePm: number,
): 'green' | 'yellow' | 'red' {
  for (const pm of [bestPm, limitPm, sizePm]) {
    if (!(Number.isInteger(pm) && Math.abs(pm) <= Number.MAX_SAFE_INTEGER / 4)) {
      throw refuse('oneSidedZone', 'not-whole', `whole picometres, got ${pm}`);
    }
  }
  if (bestPm === limitPm) {
    throw refuse(
      'oneSidedZone',
      'limits',
      `a limit away from the best size, got ${limitPm} for both`,
    );
  }
  const towards = Math.sign(limitPm - bestPm);
  const out = towards * (sizePm - bestPm);
  const room = towards * (limitPm - bestPm);
  if (out > room) return 'red';
  return 2 * out > room ? 'yellow' : 'green';
}
