import { usualDecimals } from './usual-decimals';
import { formatLength } from '@/lib/units/format-length';
import type { LengthUnit } from '@/lib/units/picometres';
import type { CloserFacts } from '../charts/closer-chart-data';

/**
 * The measured pieces of a run as comma-separated values (RFC 4180): ordinal, mark, size, lower and upper
 * limit, in the unit shown, with a point for the decimal sign, to a nanometre or ten-millionth of an inch.
 */
export function seriesCsv(facts: CloserFacts, prefix: string, unit: LengthUnit): string {
  const { ordinals, sizesPm, lowerPm, upperPm } = facts;
  const decimals = usualDecimals[unit];
  const figure = (pm: number | null) =>
    pm === null ? '' : formatLength(pm, { unit, decimals, decimal: '.' }).replace('\u2212', '-');
  const limits = `${figure(lowerPm)},${figure(upperPm)}`;
  const rows = ordinals.map(
    (ordinal, i) => `${ordinal},${quoted(`${prefix}${ordinal}`)},${figure(sizesPm[i]!)},${limits}`,
  );
  const head = `piece,mark,size ${unit},lower limit ${unit},upper limit ${unit}`;
  return [head, ...rows, ''].join('\r\n');
}

function quoted(text: string): string {
  // A sign at the start would be read as a formula by a spreadsheet.
  const safe = /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
