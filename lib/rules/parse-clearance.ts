import type { ParsedLength } from '@/lib/units/parse-length';
import { parseSigned } from './parse-signed';
import type { DecimalMark, LengthUnit } from '@/lib/units/picometres';

export type WantedText = { min: string; max: string; aim: string };

export type WantedClearance =
  | { kind: 'wanted'; minPm: number; maxPm: number; aimPm: number }
  | {
      kind: 'wrong';
      field: keyof WantedText;
      problem: Exclude<ParsedLength, { kind: 'length' }> | 'order' | 'aim outside';
    };

/**
 * Reads the least and the most clearance and the aim as a person types them; a minus is interference, and
 * an empty aim is the middle of the two, to the whole picometre.
 */
export function parseClearance(
  text: WantedText,
  setting: { decimal: DecimalMark; unit: LengthUnit },
): WantedClearance {
  const min = parseSigned(text.min, setting);
  if (min.kind !== 'length') return { kind: 'wrong', field: 'min', problem: min };
  const max = parseSigned(text.max, setting);
  if (max.kind !== 'length') return { kind: 'wrong', field: 'max', problem: max };
  if (max.pm <= min.pm) return { kind: 'wrong', field: 'max', problem: 'order' };
  if (text.aim.trim() === '') {
    const aimPm = Math.round((min.pm + max.pm) / 2);
    return { kind: 'wanted', minPm: min.pm, maxPm: max.pm, aimPm };
  }
  const aim = parseSigned(text.aim, setting);
  if (aim.kind !== 'length') return { kind: 'wrong', field: 'aim', problem: aim };
  if (aim.pm < min.pm || aim.pm > max.pm) {
    return { kind: 'wrong', field: 'aim', problem: 'aim outside' };
  }
  return { kind: 'wanted', minPm: min.pm, maxPm: max.pm, aimPm: aim.pm };
}
