import { preControlZone, type LimitsPm } from './pre-control-zone';

export type SampleDecision =
  /** Carry on; `read` says how many of the two pieces had to be measured. */
  | { decision: 'go on'; read: 1 | 2 }
  /** The first piece was yellow and the second has not been measured yet. */
  | { decision: 'measure the second'; read: 1 }
  /** Stop: both yellow on one side. Move the mean by this much, pm; below zero makes it smaller. */
  | { decision: 'reset the mean'; read: 2; shiftPm: number }
  /** Stop: yellow on both sides. Moving the mean would not help. */
  | { decision: 'spread too large'; read: 2 }
  /** Stop: a piece is outside the limits. */
  | { decision: 'outside the limits'; read: 1 | 2 };

/**
 * What two pieces in a row say while a short batch runs by zones.
 *
 * First green: go on, the second need not be measured. First yellow: the second decides; green goes
 * on, the same yellow asks for the mean to be moved by (middle of the tolerance less the mean of the
 * two), the other yellow says the spread is too large. A red stops at once.
 *
 * Limits: of use when Cp is about 1 or better; even then a centred run is stopped for nothing about
 * twice in a hundred samples (`preControlChances`). Cost: O(1). Sources: [satterthwaite-1954],
 * [shainin].
 *
 * @throws {MathsInputError} `pre-control-zone/limits`, `pre-control-zone/not-whole`
 *
 * @example
 * preControlSample({ lowerPm: 0, upperPm: 40 }, 32, 34);
 * // { decision: 'reset the mean', read: 2, shiftPm: -13 }
 */
export function preControlSample(
  limits: LimitsPm,
  firstPm: number,
  secondPm?: number,
): SampleDecision {
  const first = preControlZone(limits, firstPm);
  if (first === 'green') return { decision: 'go on', read: 1 };
  if (first === 'red low' || first === 'red high') {
    return { decision: 'outside the limits', read: 1 };
  }
  if (secondPm === undefined) return { decision: 'measure the second', read: 1 };
  const second = preControlZone(limits, secondPm);
  if (second === 'green') return { decision: 'go on', read: 2 };
  if (second === 'red low' || second === 'red high') {
    return { decision: 'outside the limits', read: 2 };
  }
  if (second !== first) return { decision: 'spread too large', read: 2 };
  const shiftPm = (limits.lowerPm + limits.upperPm - firstPm - secondPm) / 2;
  return { decision: 'reset the mean', read: 2, shiftPm };
}
