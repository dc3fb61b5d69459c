import { parseQuantity, type ParsedQuantity } from './parse-quantity';
import type { DecimalMark } from './picometres';

const units = { '': 1000, c: 1000, '\u00b0c': 1000, '\u00b0': 1000, f: 1000, '\u00b0f': 1000 };

/**
 * Reads a temperature as a person types it, thousandths of a degree C: `60`, `-10 C`, `140 F`.
 *
 * Degrees Fahrenheit are turned into the nearest thousandth of a degree C; everything else is exact.
 */
export function parseTemperature(text: string, decimal: DecimalMark): ParsedQuantity {
  const read = parseQuantity(text, { decimal, units });
  if (read.kind === 'error' || !read.unit.endsWith('f')) return read;
  return { ...read, quanta: Math.round(((read.quanta - 32_000) * 5) / 9) };
}
