import { rowsChanged } from './rows-changed';
import type { Standing } from './standing';
import { standingOf, type AnyCorrection, type AnyReading } from './standing-of';

/** What was heard of the readings of one job so far; given back to `hearRows` it saves that work. */
export type StandingMemory = {
  readings: readonly AnyReading[];
  corrections: readonly AnyCorrection[];
  /** By the reading they name. */
  correctionsOf: Map<string, AnyCorrection[]>;
  /** By reading: its row, and what it stands for. */
  known: Map<string, { row: AnyReading; standing: Standing }>;
};

/** Before anything was heard. */
export function emptyStandingMemory(): StandingMemory {
  return { readings: [], corrections: [], correctionsOf: new Map(), known: new Map() };
}

/**
 * Brings the memory to other readings and corrections, and tells of each reading whose standing is another one
 * since: the old one, the new one, or both. Together with what was there it is what `standing` gives of the
 * whole. An id is that of one reading.
 * Cost: O(rows) comparisons of references, and the work of what changed.
 */
export function hearRows(
  memory: StandingMemory,
  readings: readonly AnyReading[],
  corrections: readonly AnyCorrection[],
  tell: (before: Standing | null, after: Standing | null) => void,
): void {
  const { known, correctionsOf } = memory;
  const ofReadings = rowsChanged(memory.readings, readings);
  const ofCorrections = rowsChanged(memory.corrections, corrections);
  memory.readings = readings;
  memory.corrections = corrections;

  const named = new Set<string>();
  for (const correction of ofCorrections.gone) {
    const { readingId } = correction;
    const rest = correctionsOf.get(readingId)!.filter((one) => one !== correction);
    correctionsOf.set(readingId, rest);
    named.add(readingId);
  }
  for (const correction of ofCorrections.come) {
    const { readingId } = correction;
    correctionsOf.set(readingId, [...(correctionsOf.get(readingId) ?? []), correction]);
    named.add(readingId);
  }

  const put = (row: AnyReading) => {
    const before = known.get(row.id)?.standing ?? null;
    const standing = standingOf(row, correctionsOf.get(row.id) ?? none);
    known.set(row.id, { row, standing });
    tell(before, standing);
  };
  const isStill = new Set(ofReadings.gone.length === 0 ? [] : ofReadings.come.map(({ id }) => id));
  for (const { id } of ofReadings.gone) {
    if (isStill.has(id)) continue;
    tell(known.get(id)!.standing, null);
    known.delete(id);
  }
  for (const row of ofReadings.come) {
    named.delete(row.id);
    put(row);
  }
  for (const id of named) {
    const row = known.get(id)?.row;
    if (row !== undefined) put(row);
  }
}

const none: readonly AnyCorrection[] = [];
