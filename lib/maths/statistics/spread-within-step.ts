import { MathsInputError } from '../check';
import { requireValues } from './guards';

/**
 * Values that were rounded to whole steps, spread evenly over the step that each may have come from.
 *
 * k equal values become v - step/2 + step (j - 1/2) / k, j = 1 to k; values of their own stay where they are.
 * So a test of the form of a distribution judges the values and not the rounding, of which a long row has
 * ties without end. Between -1/2 and +1/2 step nothing is known: the spread is the flattest one, and the
 * test is a little more forgiving than it says (about half its level where the step is 0.6 of the standard
 * deviation; simulated, own argument, no source). Limits: steps below about one standard deviation. Sorted,
 * smallest first. Cost: O(n log n).
 *
 * @throws {MathsInputError} `spread-within-step/value`, `spread-within-step/too-few`,
 *   `spread-within-step/step`
 *
 * @example
 * spreadWithinStep([2, 1, 2], 1); // [1, 1.75, 2.25]
 */
export function spreadWithinStep(values: ArrayLike<number>, step: number): number[] {
  requireValues('spreadWithinStep', 'spread-within-step', values, 1);
  if (!(step > 0 && step < Infinity)) {
    throw new MathsInputError(
      'spread-within-step/step',
      `spreadWithinStep requires a step above 0, got ${step}`,
    );
  }
  const sorted = Array.from(values).sort((a, b) => a - b);
  const spread: number[] = [];
  for (let from = 0; from < sorted.length;) {
    const value = sorted[from]!;
    let to = from;
    while (to < sorted.length && sorted[to]! - value < step / 2) to += 1;
    const ties = to - from;
    for (let j = 0; j < ties; j += 1) spread.push(value + step * ((j + 0.5) / ties - 0.5));
    from = to;
  }
  return spread;
}
