import { decimalsForResolution } from '@/lib/units/decimals-for-resolution';
import { formatLength } from '@/lib/units/format-length';
import { parseLength, type LengthSetting } from '@/lib/units/parse-length';
import type { DoubtedReading } from './slip-facts';

/**
 * The text whose figures are looked at for a slip: what was typed, or the whole size in the unit of the
 * reading where only its last figures were typed.
 */
export function doubtedText(
  { text, valuePm, resolutionPm }: DoubtedReading,
  setting: LengthSetting,
): string {
  if (!/^\s*\d{1,6}\s*$/.test(text)) return text;
  const parsed = parseLength(text, setting);
  if (parsed.kind === 'length' && parsed.sizePm === valuePm) return text;
  const { unit, decimal } = setting;
  return formatLength(valuePm, {
    unit,
    decimal,
    decimals: decimalsForResolution(resolutionPm, unit),
  });
}
