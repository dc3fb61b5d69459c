import { parseTemperature } from '@/lib/units/parse-temperature';
import type { DecimalMark } from '@/lib/units/picometres';

/** Temperatures a piece on a machine may have, thousandths of a degree C. */
const [lowest, highest] = [-60_000, 400_000];

/**
 * A typed temperature of a piece in thousandths of a degree C: `41`, `21.5`, `-5 C`, `68 F`. Null where it is
 * none, or none that a piece on a machine can have.
 */
export function typedDegrees(text: string, decimal: DecimalMark): number | null {
  const read = parseTemperature(text, decimal);
  if (read.kind === 'error') return null;
  return read.quanta < lowest || read.quanta > highest ? null : read.quanta;
}
