import { MathsInputError } from '../check';
import { requireLimits, type ToleranceLimits } from './tolerance-limits';

export type ConformityZones = {
  /** Limits moved inwards by the guard: what proves the size inside, and what the maker works to. */
  accept: ToleranceLimits;
  /** Limits moved outwards by the guard: beyond them the size is proved outside. */
  reject: ToleranceLimits;
  /** True when the tolerance is narrower than two guards: no reading can prove it inside. */
  isEmpty: boolean;
};

/**
 * The limits a reading is held against when its uncertainty counts: L + g and U - g for inside,
 * L - g and U + g for outside.
 *
 * Cost: O(1). Source: [iso-14253-1] 5.
 *
 * @throws {MathsInputError} `conformity-zones/limits`, `conformity-zones/guard`
 *
 * @example
 * conformityZones({ lower: 24.98, upper: 25.01 }, 0.0033).accept; // 24.9833 to 25.0067
 */
export function conformityZones(limits: ToleranceLimits, guard: number): ConformityZones {
  requireLimits('conformityZones', 'conformity-zones', limits);
  const endless = [limits.lower, limits.upper].find((limit) => Math.abs(limit ?? 0) === Infinity);
  if (endless !== undefined) {
    throw new MathsInputError(
      'conformity-zones/limits',
      `conformityZones requires finite limits or none on a side, got ${endless}`,
    );
  }
  if (!(guard >= 0 && guard < Infinity)) {
    throw new MathsInputError(
      'conformity-zones/guard',
      `conformityZones requires a guard not below zero, got ${guard}`,
    );
  }
  const { lower, upper } = limits;
  const moved = (by: number): ToleranceLimits => ({
    ...(lower === undefined ? {} : { lower: lower + by }),
    ...(upper === undefined ? {} : { upper: upper - by }),
  });
  const accept = moved(guard);
  const isEmpty = (accept.lower ?? -Infinity) > (accept.upper ?? Infinity);
  return { accept, reject: moved(-guard), isEmpty };
}
