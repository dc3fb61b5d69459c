import type { NewReading } from '@/lib/schema/reading';
import { emptyStandingMemory, hearRows } from './standing-memory';
import type { AnyCorrection, AnyReading } from './standing-of';

/** What a reading stands for once every correction that names it has been heard. */
export type Standing = {
  id: string;
  /** Place in the book; entries not in the book yet come after all others. */
  seq: number;
  pieceId: string;
  featureId: string;
  station: string;
  direction: string;
  gaugeId: string;
  personId: string | null;
  /** The value that counts, pm; not the first typed one where it was mistyped. */
  valuePm: number;
  /** The last place of the text that counts, pm. */
  resolutionPm: number;
  unit: 'mm' | 'in';
  /** The text that counts. */
  text: string;
  /** The text first typed, where a mistyped correction replaced it; otherwise null. */
  firstText: string | null;
  deviceTime: string;
  state: 'counted' | 'held' | 'struck';
  /** The slip it was suspected of when it was taken; stays named after it is settled. */
  heldAs: NewReading['heldAs'];
  /** The reason given with the last correction; empty where there was none. */
  reason: string;
  /** A person has said, last of all, that it is right as it stands. */
  saidRight: boolean;
  /** Of one that is struck: it was held then, and nobody had settled what it was suspected of. */
  wasHeld: boolean;
};

/**
 * Readings with their corrections applied, in the order of the book.
 *
 * Corrections are heard in the order of the book, whatever their clocks say; one that names a reading
 * that is not here (it came first) is left for later. Nothing is dropped: a struck reading comes back
 * as struck. Cost: O(readings + corrections), plus the sort.
 */
export function standing(
  readings: readonly AnyReading[],
  corrections: readonly AnyCorrection[],
): Standing[] {
  const memory = emptyStandingMemory();
  hearRows(memory, readings, corrections, () => undefined);
  const standings = [...memory.known.values()].map((one) => one.standing);
  return standings.sort((a, b) => a.seq - b.seq);
}
