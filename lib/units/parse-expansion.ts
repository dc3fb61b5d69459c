import { parseQuantity, type ParsedQuantity } from './parse-quantity';
import type { DecimalMark } from './picometres';

const units = {
  '': 1000,
  'e-6': 1000,
  ppm: 1000,
  'ppm/c': 1000,
  'ppm/\u00b0c': 1000,
  'ppm/k': 1000,
  '\u00b5m/m': 1000,
  'um/m': 1000,
  '\u00b5m/mk': 1000,
  'e-6/k': 1000,
  'e-6/c': 1000,
  'e-6/\u00b0c': 1000,
  '\u00b5m/m/c': 1000,
  '\u00b5m/m\u00b0c': 1000,
};

/**
 * Reads a coefficient of expansion, in 1e-9 per degree C: `11.5` and `11.5 ppm` are 11 500. Without a
 * unit it is millionths per degree C, as tables print it.
 */
export function parseExpansion(text: string, decimal: DecimalMark): ParsedQuantity {
  return parseQuantity(text, { decimal, units });
}
