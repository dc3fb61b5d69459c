import type { LengthUnit } from '@/lib/units/picometres';

/**
 * The reading just taken, for who hears it: "17.999 millimetres, crown, across B. Inside. 2 read."
 *
 * @param where its place and how it was typed; empty where there is nothing to say of either
 */
export function heardWords(reading: {
  figure: string;
  unit: LengthUnit;
  where: string;
  verdict: string;
  read: number;
}): string {
  const { figure, unit, where, verdict, read } = reading;
  const at = where === '' ? '' : `, ${where}`;
  return `${figure} ${unit === 'mm' ? 'millimetres' : 'inches'}${at}. ${verdict}. ${read} read.`;
}
