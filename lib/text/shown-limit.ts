import { decimalsForResolution } from '@/lib/units/decimals-for-resolution';
import { formatLength } from '@/lib/units/format-length';
import { pmPerUnit } from '@/lib/units/picometres';
import type { Shown } from './shown-size';

/**
 * A limit or an aim, to the place the gauge shows, and one place more where it would not be exact there:
 * a limit of 18.0005 is never shown rounded to a size it is not.
 */
export function shownLimit(pm: number, resolutionPm: number, { unit, decimal }: Shown): string {
  const gauge = decimalsForResolution(resolutionPm, unit);
  const isExact = (pm * 10 ** gauge) % pmPerUnit(unit) === 0;
  return formatLength(Math.round(pm), { unit, decimals: isExact ? gauge : gauge + 1, decimal });
}
