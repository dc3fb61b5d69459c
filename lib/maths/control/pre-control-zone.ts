import { refuse } from './guards';

/** Limits of the drawing as exact whole picometres, lower below upper. */
export type LimitsPm = { lowerPm: number; upperPm: number };

export type PreControlZone = 'green' | 'yellow low' | 'yellow high' | 'red low' | 'red high';

/**
 * Zone of one size: green is the middle half of the tolerance, yellow the outer quarters, red outside.
 *
 *     lines at lower + T/4 and upper - T/4
 *
 * A size exactly on a line is green, exactly on a limit yellow. Sizes and limits are whole
 * picometres, so "exactly on" is exact: 4 size is compared with 3 lower + upper.
 *
 * Limits: sizes and limits to two kilometres. Cost: O(1). Sources: [satterthwaite-1954], [shainin].
 *
 * @throws {MathsInputError} `pre-control-zone/limits`, `pre-control-zone/not-whole`
 *
 * @example
 * preControlZone({ lowerPm: 9_980_000_000, upperPm: 10_020_000_000 }, 9_990_000_000); // 'green'
 */
export function preControlZone({ lowerPm, upperPm }: LimitsPm, sizePm: number): PreControlZone {
  requirePm('limits', lowerPm);
  requirePm('limits', upperPm);
  requirePm('size', sizePm);
  if (!(lowerPm < upperPm)) {
    const got = `${lowerPm} and ${upperPm} pm`;
    throw refuse('preControlZone', 'limits', `a lower limit below the upper, got ${got}`);
  }
  if (sizePm < lowerPm) return 'red low';
  if (sizePm > upperPm) return 'red high';
  if (4 * sizePm < 3 * lowerPm + upperPm) return 'yellow low';
  if (4 * sizePm > lowerPm + 3 * upperPm) return 'yellow high';
  return 'green';
}

/** Four times any of them still has to be a whole number a double holds. */
const mostPm = Number.MAX_SAFE_INTEGER / 4;

function requirePm(what: string, pm: number): void {
  if (!(Number.isInteger(pm) && Math.abs(pm) <= mostPm)) {
    throw refuse('preControlZone', 'not-whole', `${what} in whole picometres, got ${pm}`);
  }
}
