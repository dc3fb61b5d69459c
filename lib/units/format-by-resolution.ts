import { decimalsForResolution } from './decimals-for-resolution';
import { formatLength } from './format-length';
import type { DecimalMark, LengthUnit } from './picometres';

export type ResolutionFormat = {
  unit: LengthUnit;
  decimal?: DecimalMark;
  sign?: 'needed' | 'always';
};

/**
 * A length with as many decimals as its resolution fills, without the name of the unit.
 *
 * @throws {RangeError} when `resolutionPm` is not finite and above zero
 *
 * @example
 * formatByResolution(25_000_000_000, 10_000_000, { unit: 'mm' }); // '25.00'
 */
export function formatByResolution(
  pm: number,
  resolutionPm: number,
  { unit, decimal = '.', sign = 'needed' }: ResolutionFormat,
): string {
  const decimals = decimalsForResolution(resolutionPm, unit);
  return formatLength(pm, { unit, decimals, decimal, sign });
}
