import type { LengthUnit } from '@/lib/units/picometres';
import type { CloserFacts } from '../charts/closer-chart-data';
import { csvLength, csvText } from '../save/csv-cell';

/**
 * The measured pieces of a run as comma-separated values (RFC 4180): ordinal, mark, size, lower and upper
 * limit, in the unit shown, with a point for the decimal sign, to a nanometre or ten-millionth of an inch.
 */
export function seriesCsv(facts: CloserFacts, prefix: string, unit: LengthUnit): string {
  const { ordinals, sizesPm, lowerPm, upperPm } = facts;
  const limits = `${csvLength(lowerPm, unit)},${csvLength(upperPm, unit)}`;
  const rows = ordinals.map(
    (ordinal, i) =>
      `${ordinal},${csvText(`${prefix}${ordinal}`)},${csvLength(sizesPm[i]!, unit)},${limits}`,
  );
  const head = `piece,mark,size ${unit},lower limit ${unit},upper limit ${unit}`;
  return [head, ...rows, ''].join('\r\n');
}
