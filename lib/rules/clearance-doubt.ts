import { effectiveDegrees } from '@/lib/maths/metrology/effective-degrees';
import { expandedUncertainty } from '@/lib/maths/metrology/expanded-uncertainty';
import { coverage, type Size } from './size';

type Known = Pick<Size, 'standardPm' | 'degrees'>;

/**
 * Expanded uncertainty of the difference of two sizes, pm, at the same 95.45 % as that of each size.
 *
 * U = t(95.45 %, nu) u with u = sqrt(u1^2 + u2^2) and nu by Welch and Satterthwaite (JCGM 100 G.4.1): two means
 * of three readings, each known to 4.53 u of its own, give a difference known to 2.87 u of both.
 */
export function clearanceDoubt(internal: Known, external: Known): number {
  const parts = [internal, external].map(({ standardPm, degrees }) => ({
    contribution: standardPm,
    degrees,
  }));
  const standardPm = Math.hypot(internal.standardPm, external.standardPm);
  return expandedUncertainty(standardPm, effectiveDegrees(parts), coverage).expanded;
}
