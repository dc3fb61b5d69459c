import { decimalsForResolution } from '@/lib/units/decimals-for-resolution';
import { formatLength } from '@/lib/units/format-length';
import type { LengthUnit } from '@/lib/units/picometres';
import type { Shown } from './shown-size';
import { unitWords } from './unit-words';

/** What a gauge can do, in its own unit: "0.001 mm, 0 to 25", or only the step where it states no range. */
export function gaugeFacts(
  gauge: {
    unit: LengthUnit;
    resolutionPm: number;
    rangeLowPm: number | null;
    rangeHighPm: number | null;
  },
  { decimal }: Pick<Shown, 'decimal'>,
): string {
  const { unit, resolutionPm, rangeLowPm, rangeHighPm } = gauge;
  const decimals = decimalsForResolution(resolutionPm, unit);
  const step = `${formatLength(resolutionPm, { unit, decimals, decimal })} ${unitWords(unit)}`;
  const plain = (pm: number) => {
    const text = formatLength(pm, { unit, decimals: 4, decimal });
    return text.replace(/[.,]?0+$/, '') || '0';
  };
  if (rangeHighPm === null)
    return rangeLowPm === null ? step : `${step}, from ${plain(rangeLowPm)}`;
  return `${step}, ${plain(rangeLowPm ?? 0)} to ${plain(rangeHighPm)}`;
}
