import { refuse } from './guards';
import type { LimitsPm } from './pre-control-zone';

/**
 * The four lines to draw: lower limit, lower + T/4, upper - T/4, upper limit, in picometres.
 *
 * The middle two may be quarter picometres. Cost: O(1). Sources: [satterthwaite-1954], [shainin].
 *
 * @throws {MathsInputError} `pre-control-lines/limits`
 *
 * @example
 * preControlLines({ lowerPm: 0, upperPm: 40 }); // [0, 10, 30, 40]
 */
export function preControlLines({ lowerPm, upperPm }: LimitsPm): [number, number, number, number] {
  if (!(Number.isSafeInteger(lowerPm) && Number.isSafeInteger(upperPm) && lowerPm < upperPm)) {
    const got = `${lowerPm} and ${upperPm} pm`;
    throw refuse('preControlLines', 'limits', `a lower limit below the upper, got ${got}`);
  }
  const quarter = (upperPm - lowerPm) / 4;
  return [lowerPm, lowerPm + quarter, upperPm - quarter, upperPm];
}
