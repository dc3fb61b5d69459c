import { decimalsForUncertainty, type UncertaintyFigures } from './decimals-for-uncertainty';
import { formatLength } from './format-length';
import type { DecimalMark, LengthUnit } from './picometres';

export type UncertaintyFormat = {
  unit: LengthUnit;
  decimal?: DecimalMark;
  /** Significant figures of the uncertainty: one unless told otherwise, two at most. */
  figures?: UncertaintyFigures;
  sign?: 'needed' | 'always';
};

/**
 * A length and its uncertainty to the same place, without the name of the unit.
 *
 * JCGM 100:2008 7.2.6. Both are rounded half to even; the length shows no digit the uncertainty
 * does not support. An uncertainty too small for nine decimals is shown as zero there.
 *
 * @throws {RangeError} when `uncertaintyPm` is not finite and above zero
 *
 * @example
 * formatByUncertainty(24_987_300_000, 2_100_000, { unit: 'mm' });
 * // { value: '24.987', uncertainty: '0.002', decimals: 3 }
 */
export function formatByUncertainty(pm: number, uncertaintyPm: number, format: UncertaintyFormat) {
  const { unit, decimal = '.', figures = 1, sign = 'needed' } = format;
  const decimals = decimalsForUncertainty(uncertaintyPm, unit, figures);
  return {
    value: formatLength(pm, { unit, decimals, decimal, sign }),
    uncertainty: formatLength(Math.round(uncertaintyPm), { unit, decimals, decimal }),
    decimals,
  };
}
