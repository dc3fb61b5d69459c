import type { LengthUnit } from '@/lib/units/picometres';

/** The unit as a title block names it: "in" beside nothing would read as a word. */
export function unitWords(unit: LengthUnit): string {
  return unit === 'mm' ? 'mm' : 'inches';
}
