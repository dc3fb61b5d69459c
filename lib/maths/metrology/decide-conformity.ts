import { MathsInputError } from '../check';
import { conformityZones } from './conformity-zones';
import type { ToleranceLimits } from './tolerance-limits';

export type Verdict = 'inside' | 'outside' | 'unsure';

/**
 * Whether a measured size is proved inside its limits, proved outside, or not known well enough to say.
 *
 * Inside: L + g <= y <= U - g. Outside: y < L - g or y > U + g. Between: unsure. A reading exactly on
 * L - g or U + g is unsure. With a tolerance narrower than two guards nothing is proved inside.
 * Cost: O(1). Source: [iso-14253-1] 5.
 *
 * @throws {MathsInputError} `decide-conformity/value`, `conformity-zones/limits`,
 *   `conformity-zones/guard`
 *
 * @example
 * decideConformity(25.006, { lower: 24.98, upper: 25.01 }, 0.0033); // 'inside'
 */
export function decideConformity(y: number, limits: ToleranceLimits, guard: number): Verdict {
  if (!Number.isFinite(y)) {
    throw new MathsInputError(
      'decide-conformity/value',
      `decideConformity requires a finite value, got ${y}`,
    );
  }
  const { accept, reject } = conformityZones(limits, guard);
  if (y >= (accept.lower ?? -Infinity) && y <= (accept.upper ?? Infinity)) return 'inside';
  if (y < (reject.lower ?? -Infinity) || y > (reject.upper ?? Infinity)) return 'outside';
  return 'unsure';
}
