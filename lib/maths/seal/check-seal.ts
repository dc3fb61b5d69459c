import { MathsInputError } from '../check';

/** Refuses lengths that are not finite and above zero; the message names the first. */
export function requireLengths(
  file: string,
  caller: string,
  lengthsMm: Readonly<Record<string, number>>,
): void {
  for (const [name, length] of Object.entries(lengthsMm)) {
    if (length > 0 && length < Infinity) continue;
    throw new MathsInputError(
      `${file}/length`,
      `${caller} requires lengths above zero, got ${length} for ${name}`,
    );
  }
}

/** Refuses two diameters that are not in order, the first the smaller. */
export function requireOrder(
  file: string,
  caller: string,
  what: string,
  smaller: number,
  larger: number,
): void {
  if (smaller < larger) return;
  throw new MathsInputError(
    `${file}/order`,
    `${caller} requires ${what}, got ${smaller} and ${larger}`,
  );
}

/** Area of a round section, mm2. */
export const sectionArea = (sectionMm: number): number => (Math.PI * sectionMm * sectionMm) / 4;

/** What is wrong with a gland, as data for a sentence. */
export type GlandFault =
  /** The gland is deeper than the ring is thick, by this much: nothing seals. */
  | { kind: 'no-squeeze'; gapMm: number }
  /** The ring has more section than the gland has room. */
  | { kind: 'overfull'; fillPercent: number };

/** Faults of a gland of a depth and a fill. */
export function glandFaults(depthMm: number, sectionMm: number, fillPercent: number): GlandFault[] {
  const faults: GlandFault[] = [];
  if (depthMm >= sectionMm) faults.push({ kind: 'no-squeeze', gapMm: depthMm - sectionMm });
  if (fillPercent > 100) faults.push({ kind: 'overfull', fillPercent });
  return faults;
}
