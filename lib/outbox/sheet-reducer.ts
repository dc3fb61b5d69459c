import type { Change, ThingKind } from '@/lib/schema/change';
import type { JobSheet } from '@/lib/schema/sheet';

/** Which list of the sheet holds each kind; the job stands alone, settings are not on the sheet. */
const lists = {
  part: 'parts',
  piece: 'pieces',
  feature: 'features',
  gauge: 'gauges',
  person: 'people',
  fit: 'fits',
  pair: 'pairs',
  cut: 'cuts',
  run: 'runs',
  runEvent: 'runEvents',
  departure: 'departures',
  picture: 'pictures',
  material: 'materials',
  fitRule: 'fitRules',
} as const satisfies Partial<Record<ThingKind, keyof JobSheet>>;

/**
 * The sheet after one change of the log. Pure.
 *
 * A change the sheet is already true at, one of another job, and a setting give the same sheet back. A thing
 * takes the place of the row of its id, unless that row is of the same version or newer (the answer to one's
 * own change may come before the log tells of it), or is put last; the lists are not sorted here. Struck
 * things stay, with `struckAt`. Readings and corrections are added once by id, in the order of their numbers
 * in the book.
 *
 * Cost: O(length of the list it falls into).
 */
export function applyChange(sheet: JobSheet, change: Change): JobSheet {
  const { seq, thing, after, jobId } = change;
  if (seq <= sheet.seq || typeof after.id !== 'string') return sheet;
  if (jobId !== null && jobId !== sheet.job.id) return sheet;
  if (thing === 'setting') return sheet;
  if (thing === 'job') {
    const [job] = placed([sheet.job], after as JobSheet['job']);
    return { ...sheet, seq, job: job! };
  }
  if (thing === 'reading') {
    return { ...sheet, seq, readings: added(sheet.readings, after as JobSheet['readings'][0]) };
  }
  if (thing === 'correction') {
    const corrections = added(sheet.corrections, after as JobSheet['corrections'][0]);
    return { ...sheet, seq, corrections };
  }
  const list = lists[thing];
  return { ...sheet, seq, [list]: placed(sheet[list] as Thing[], after as Thing) };
}

type Thing = { id: string; version: number };

function placed<T extends Thing>(list: T[], thing: T): T[] {
  const at = list.findIndex(({ id }) => id === thing.id);
  if (at === -1) return [...list, thing];
  if (list[at]!.version >= thing.version) return list;
  return [...list.slice(0, at), thing, ...list.slice(at + 1)];
}

function added<T extends { id: string; seq: number }>(rows: T[], row: T): T[] {
  if (rows.some(({ id }) => id === row.id)) return rows;
  const later = rows.findIndex(({ seq }) => seq > row.seq);
  const at = later === -1 ? rows.length : later;
  return [...rows.slice(0, at), row, ...rows.slice(at)];
}
