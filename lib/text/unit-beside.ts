import type { LengthUnit } from '@/lib/units/picometres';
import type { Shown } from './shown-size';

/** Behind a figure in `unit`: its unit where that is not the one shown, else nothing. */
export function unitBeside(unit: LengthUnit, shown: Shown): string {
  return unit === shown.unit ? '' : ` ${unit}`;
}
