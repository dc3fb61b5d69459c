import { parseLength, type ParsedLength } from '@/lib/units/parse-length';
import type { DecimalMark, LengthUnit } from '@/lib/units/picometres';

/** Larger than any clearance or offset, so that no sign is taken for a gauge's own. */
const beyondAnyPm = 1_000_000_000_000_000;

/**
 * Reads a length whose sign is its own: a clearance, an offset. `pm` of the answer is the signed length;
 * its `sizePm` means nothing here.
 */
export function parseSigned(
  text: string,
  setting: { decimal: DecimalMark; unit: LengthUnit },
): ParsedLength {
  const { decimal, unit } = setting;
  return parseLength(text, { decimal, unit, nominalPm: beyondAnyPm });
}
