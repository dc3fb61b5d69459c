import { parseQuantity, type ParsedQuantity } from './parse-quantity';
import type { DecimalMark } from './picometres';

/** Nanometres per millimetre of each way to say so much per diameter. A thou per inch is a µm per mm. */
const units = {
  '': 1000,
  '\u00b5m/mm': 1000,
  'um/mm': 1000,
  '\u00b5mpermm': 1000,
  umpermm: 1000,
  'mm/m': 1000,
  mmperm: 1000,
  'mm/mm': 1_000_000,
  mmpermm: 1_000_000,
  'thou/in': 1000,
  'thou/inch': 1000,
  thouperin: 1000,
  thouperinch: 1000,
  thouaninch: 1000,
  'in/in': 1_000_000,
  inperin: 1_000_000,
  inchperinch: 1_000_000,
  '%': 10_000_000,
};

/**
 * Reads how much a clearance grows with the diameter, nanometres per millimetre: `1`, `-0.75 thou/in`,
 * `1.5 µm per mm`, `0.001 in/in`. Without a unit it is µm per mm, which is thou per inch.
 *
 * @example
 * parseSlope('1 thou per inch', '.'); // { kind: 'quantity', quanta: 1000, unit: 'thouperinch' }
 */
export function parseSlope(text: string, decimal: DecimalMark): ParsedQuantity {
  return parseQuantity(text, { decimal, units });
}
