import type { Change } from '@/lib/schema/change';
import type { Correction, Reading } from '@/lib/schema/reading';
import type { JobSheet } from '@/lib/schema/sheet';
import { jobId } from './world';

/** A sheet with one row in the lists the tests look at; rows carry only what the reducer reads. */
export function sheetOf(more: Partial<JobSheet> = {}): JobSheet {
  return {
    seq: 10,
    job: { id: jobId, version: 1, name: 'Engine' } as JobSheet['job'],
    parts: [],
    pieces: [{ id: 'piece-1', version: 2, mark: 'L1' } as JobSheet['pieces'][0]],
    features: [],
    fits: [],
    pairs: [],
    cuts: [],
    runs: [],
    runEvents: [],
    departures: [],
    pictures: [],
    gauges: [],
    people: [],
    materials: [],
    fitRules: [],
    readings: [],
    corrections: [],
    ...more,
  };
}

export const readingRow = (id: string, seq: number) => ({ id, seq, jobId }) as Reading;
export const correctionRow = (id: string, seq: number) => ({ id, seq, jobId }) as Correction;

export function changeOf(
  seq: number,
  thing: Change['thing'],
  after: Record<string, unknown>,
  more: Partial<Change> = {},
): Change {
  return {
    seq,
    at: '2026-11-25T09:00:00.000Z',
    personId: null,
    deviceId: 'd',
    jobId,
    thing,
    thingId: String(after.id),
    act: 'changed',
    after,
    ...more,
  };
}

/** Freezes all the way down, so that a change in place fails the test. */
export function frozen<T>(value: T): T {
  if (typeof value === 'object' && value !== null) {
    Object.values(value).forEach(frozen);
    Object.freeze(value);
  }
  return value;
}
