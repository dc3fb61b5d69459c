import { formatLength } from '@/lib/units/format-length';
import type { LengthUnit } from '@/lib/units/picometres';
import { usualDecimals } from '../closer/usual-decimals';

/** A length as a cell of comma-separated values: a point for the decimal sign, a hyphen for the minus. */
export function csvLength(pm: number | null, unit: LengthUnit): string {
  if (pm === null) return '';
  const decimals = usualDecimals[unit];
  return formatLength(Math.round(pm), { unit, decimals, decimal: '.' }).replace('\u2212', '-');
}

/** Words as a cell (RFC 4180); a sign at the start would be read as a formula by a spreadsheet. */
export function csvText(text: string): string {
  const safe = /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
