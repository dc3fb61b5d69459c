import { decimalsForResolution } from '@/lib/units/decimals-for-resolution';
import { decimalsForUncertainty } from '@/lib/units/decimals-for-uncertainty';
import { formatLength } from '@/lib/units/format-length';
import { pmPerUnit, type DecimalMark, type LengthUnit } from '@/lib/units/picometres';

/** How lengths are shown to this person: the job's unit and their own decimal mark. */
export type Shown = { unit: LengthUnit; decimal: DecimalMark };

/**
 * A size with its expanded uncertainty, to the place the doubt allows and the gauge can show.
 *
 * The uncertainty is rounded up, never to nothing, unless less than a twentieth of it would be lost
 * (JCGM 100, 7.2.6: "common sense should prevail"); the size is rounded to the same place. A gauge of 0.001 known to 0.0004 shows 17.999 and 0.001: no digit is shown that no reading had.
 */
export function shownSize(
  size: { valuePm: number; expandedPm: number },
  resolutionPm: number,
  { unit, decimal }: Shown,
): { value: string; plusMinus: string; decimals: number } {
  const decimals = Math.min(
    decimalsForUncertainty(size.expandedPm, unit),
    decimalsForResolution(resolutionPm, unit),
  );
  const stepPm = pmPerUnit(unit) / 10 ** decimals;
  const steps = Math.max(1, Math.ceil((0.95 * size.expandedPm) / stepPm));
  return {
    value: formatLength(size.valuePm, { unit, decimals, decimal }),
    plusMinus: formatLength(Math.round(steps * stepPm), { unit, decimals, decimal }),
    decimals,
  };
}

/** A length to the place a gauge of this resolution shows. */
export function shownLength(
  pm: number,
  resolutionPm: number,
  { unit, decimal }: Shown,
  sign: 'needed' | 'always' = 'needed',
): string {
  const decimals = decimalsForResolution(resolutionPm, unit);
  return formatLength(pm, { unit, decimals, decimal, sign });
}
