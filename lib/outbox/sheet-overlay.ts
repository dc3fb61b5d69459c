import type { Cut } from '@/lib/schema/fit';
import type { Correction, Reading } from '@/lib/schema/reading';
import type { RunEvent } from '@/lib/schema/run';
import type { JobSheet } from '@/lib/schema/sheet';
import type { Entry } from './entry';

const nothing: ReadonlySet<string> = new Set();

/**
 * The sheet with this device's own entries laid over it, so that an entry is seen before the server has it.
 *
 * An entry the sheet holds already, of another job, or set aside changes nothing. One that is in the book, but
 * has not reached the sheet, takes its own number. The others come after all rows of the book, in the order of
 * their running numbers, with numbers that are only good for sorting; `pending` names them. Cuts come after
 * the other cuts of their piece and feature, where the book will put them; events of runs stand where they say.
 * What is struck out or put back stands so until the sheet has the line of the book that says it; `pending` names
 * the thing too while that is not there.
 *
 * Pure; gives the same sheet back when nothing is laid over it, and the same row for the same entry. The rows of
 * the sheet stand in the order of their numbers. Cost: O(readings + corrections).
 */
export function overlayEntries(
  sheet: JobSheet,
  entries: readonly Entry[],
): { sheet: JobSheet; pending: ReadonlySet<string> } {
  const mine = entries.filter(
    ({ jobId, state }) => jobId === sheet.job.id && state !== 'set aside',
  );
  if (mine.length === 0) return { sheet, pending: nothing };
  const pending = new Set<string>();
  const readings = laidOver<Reading>(sheet.readings, mine, 'reading', pending);
  const corrections = laidOver<Correction>(sheet.corrections, mine, 'correction', pending);
  const struck = strikesOf(sheet, mine, pending);
  const cuts = asStruck(cutsLaidOver(sheet.cuts, mine, pending), struck);
  const runEvents = asStruck(eventsLaidOver(sheet.runEvents, mine, pending), struck);
  const over = { readings, corrections, cuts, runEvents };
  const isSame = (Object.keys(over) as (keyof typeof over)[]).every(
    (name) => over[name] === sheet[name],
  );
  return isSame ? { sheet, pending: nothing } : { sheet: { ...sheet, ...over }, pending };
}

function cutsLaidOver(rows: Cut[], entries: readonly Entry[], pending: Set<string>): Cut[] {
  const there = new Set(rows.map(({ id }) => id));
  const missing = entries.filter((entry) => entry.kind === 'cut' && !there.has(entry.id));
  if (missing.length === 0) return rows;
  const cuts = [...rows];
  for (const entry of missing.sort((a, b) => a.deviceSeq - b.deviceSeq)) {
    if (entry.kind !== 'cut') continue;
    const { row, jobId, deviceId, receivedAt } = entry;
    const others = cuts.filter(
      ({ pieceId, featureId }) => pieceId === row.pieceId && featureId === row.featureId,
    );
    if (entry.seq === null) pending.add(entry.id);
    cuts.push({
      ...row,
      jobId,
      deviceId,
      afterPm: null,
      ordinal: Math.max(0, ...others.map(({ ordinal }) => ordinal)) + 1,
      version: 1,
      createdAt: receivedAt ?? row.deviceTime,
      struckAt: null,
    });
  }
  return cuts;
}

function eventsLaidOver(
  rows: RunEvent[],
  entries: readonly Entry[],
  pending: Set<string>,
): RunEvent[] {
  const there = new Set(rows.map(({ id }) => id));
  const missing = entries.filter((entry) => entry.kind === 'event' && !there.has(entry.id));
  if (missing.length === 0) return rows;
  const events = [...rows];
  for (const entry of missing.sort((a, b) => a.deviceSeq - b.deviceSeq)) {
    if (entry.kind !== 'event') continue;
    const { row, jobId, deviceId, receivedAt } = entry;
    if (entry.seq === null) pending.add(entry.id);
    events.push({
      ...row,
      jobId,
      deviceId,
      at: new Date(row.deviceTime).toISOString(),
      version: 1,
      createdAt: receivedAt ?? row.deviceTime,
      struckAt: null,
    });
  }
  return events;
}

/** When each thing was struck out, or null where it was put back, by what the sheet does not show yet. */
function strikesOf(
  sheet: JobSheet,
  entries: readonly Entry[],
  pending: Set<string>,
): ReadonlyMap<string, string | null> {
  const struck = new Map<string, string | null>();
  const strikes = entries
    .filter((entry) => entry.kind === 'strike')
    .filter(({ seq }) => seq === null || seq > sheet.seq)
    .sort((a, b) => a.deviceSeq - b.deviceSeq);
  for (const { id, row, seq, receivedAt } of strikes) {
    if (seq === null) pending.add(id).add(row.thingId);
    struck.set(row.thingId, row.struck ? (receivedAt ?? row.deviceTime) : null);
  }
  return struck;
}

function asStruck<Row extends { id: string; struckAt: string | null }>(
  rows: Row[],
  struck: ReadonlyMap<string, string | null>,
): Row[] {
  const differs = ({ id, struckAt }: Row) =>
    struck.has(id) && (struck.get(id) === null) !== (struckAt === null);
  if (!rows.some(differs)) return rows;
  return rows.map((row) => (differs(row) ? { ...row, struckAt: struck.get(row.id)! } : row));
}

function laidOver<Row extends Reading | Correction>(
  rows: Row[],
  entries: readonly Entry[],
  kind: 'reading' | 'correction',
  pending: Set<string>,
): Row[] {
  const there = idsOf(rows);
  const missing = entries.filter((entry) => entry.kind === kind && !there.has(entry.id));
  if (missing.length === 0) return rows;
  const inBook = missing
    .filter(({ seq }) => seq !== null)
    .map((entry) => rowOf<Row>(entry, entry.seq!));
  const known = inBook.length === 0 ? rows : [...rows, ...inBook].sort((a, b) => a.seq - b.seq);
  let seq = known.at(-1)?.seq ?? 0;
  const waiting = missing
    .filter((entry) => entry.seq === null)
    .sort((a, b) => a.deviceSeq - b.deviceSeq)
    .map((entry) => {
      pending.add(entry.id);
      seq += 1;
      return rowOf<Row>(entry, seq);
    });
  return [...known, ...waiting];
}

/** Of lists that were asked for before: a sheet is laid over again and again between two changes of the book. */
const knownIds = new WeakMap<readonly { id: string }[], ReadonlySet<string>>();

function idsOf(rows: readonly { id: string }[]): ReadonlySet<string> {
  const known = knownIds.get(rows);
  if (known !== undefined) return known;
  const ids = new Set(rows.map(({ id }) => id));
  knownIds.set(rows, ids);
  return ids;
}

/** The row each entry was laid over as; the same object as long as its number is. */
const knownRows = new WeakMap<Entry, { seq: number }>();

function rowOf<Row>(entry: Entry, seq: number): Row {
  const known = knownRows.get(entry);
  if (known?.seq === seq) return known as Row;
  const { row, jobId, deviceId, receivedAt } = entry;
  const made = { ...row, seq, jobId, deviceId, receivedAt: receivedAt ?? row.deviceTime };
  knownRows.set(entry, made);
  return made as Row;
}
