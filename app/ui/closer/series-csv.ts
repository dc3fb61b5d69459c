import type { LengthUnit } from '@/lib/units/picometres';
import type { CloserFacts } from '../charts/closer-chart-data';
import { csvLength, csvText } from '../save/csv-cell';

/**
 * The measured pieces of a run as comma-separated values (RFC 4180): ordinal, mark, size, lower and upper
 * limit, in the unit shown, with a point for the decimal sign, to a nanometre or ten-millionth of an inch.
 */
export function seriesCsv(facts: CloserFacts, prefix: string, unit: LengthUnit): string {
  const { ordinals, sizesPm, lowerPm, upperPm, marks } = facts;
  const limits = `${csvLength(lowerPm, unit)},${csvLength(upperPm, unit)}`;
  const rows = ordinals.map(
    (ordinal, i) =>
      `${ordinal},${csvText(marks?.[i] ?? `${prefix}${ordinal}`)},${csvLength(sizesPm[i]!, unit)},${limits}`,
  );
  const what = marks === null ? 'piece,mark,size' : 'turn,mark,from nominal';
  const head = `${what} ${unit},lower limit ${unit},upper limit ${unit}`;
  return [head, ...rows, ''].join('\r\n');
}
