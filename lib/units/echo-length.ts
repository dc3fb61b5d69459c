import { decimalsForResolution } from './decimals-for-resolution';
import { formatLength } from './format-length';
import type { LengthMeaning } from './parse-length';
import type { DecimalMark, LengthUnit } from './picometres';

/** How a typed length will be read, in both units, without the names of the units. */
export type LengthEcho = {
  own: string;
  ownUnit: LengthUnit;
  other: string;
  otherUnit: LengthUnit;
};

/**
 * The size a typed length stands for, in the job's unit and in the other one.
 *
 * Each shows as many decimals as the typed digits fill in that unit; a fraction, which has no last
 * digit, shows 3 in mm and 4 in inches. The kept length is never changed by this.
 *
 * @example
 * const parsed = parseLength('.9837', { unit: 'in', decimal: '.' });
 * if (parsed.kind === 'length') echoLength(parsed, { unit: 'in', decimal: '.' });
 * // { own: '0.9837', ownUnit: 'in', other: '24.986', otherUnit: 'mm' }
 */
export function echoLength(
  meaning: LengthMeaning,
  { unit, decimal }: { unit: LengthUnit; decimal: DecimalMark },
): LengthEcho {
  const otherUnit = unit === 'mm' ? 'in' : 'mm';
  const show = (shown: LengthUnit) =>
    formatLength(meaning.sizePm, { unit: shown, decimals: decimalsOf(meaning, shown), decimal });
  return { own: show(unit), ownUnit: unit, other: show(otherUnit), otherUnit };
}

function decimalsOf({ resolutionPm }: LengthMeaning, unit: LengthUnit): number {
  if (resolutionPm === null) return unit === 'mm' ? 3 : 4;
  return decimalsForResolution(resolutionPm, unit);
}
