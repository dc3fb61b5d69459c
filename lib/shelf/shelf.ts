import { openDB, type DBSchema, type IDBPDatabase } from 'idb';
import { usualChartSettings } from '@/lib/schema/chart-settings';
import type { JobSheet } from '@/lib/schema/sheet';

/** What this device and this shop have chosen, as the sheets of a job need it. */
export type ShelfChoice = {
  unit: 'mm' | 'in';
  decimal: '.' | ',';
  hand: 'right' | 'left';
  personId: string | null;
  /** Light, dark or glare; null follows the machine. */
  theme: string | null;
};

/** A job that was opened on this device, as it last stood here. */
export type ShelvedJob = {
  jobId: string;
  sheet: JobSheet;
  chosen: ShelfChoice;
  keptAtMs: number;
};

/** One line of the list: what is on the shelf without the sheets themselves. */
export type ShelfLine = { jobId: string; name: string; number: number; keptAtMs: number };

export type Shelf = {
  /** Puts a job there, over what was; jobs beyond the most are taken down, oldest first. */
  put: (job: Omit<ShelvedJob, 'keptAtMs'>) => Promise<void>;
  get: (jobId: string) => Promise<ShelvedJob | null>;
  list: () => Promise<ShelfLine[]>;
};

/** As many jobs stay on the shelf; a job takes about a megabyte for 5,000 readings. */
const jobsMost = 12;
const openWithinMs = 4000;

/** Lists that a sheet put aside by an earlier program does not have. */
const addedSince: Pick<JobSheet, 'materials' | 'fitRules'> = { materials: [], fitRules: [] };

/** A sheet as this program reads it: what an earlier one did not have is as it then was. */
function asNow(sheet: JobSheet): JobSheet {
  const runs = sheet.runs.map((run) => ({ ...usualChartSettings, ...run }));
  return { ...addedSince, ...sheet, runs };
}

interface Shape extends DBSchema {
  jobs: { key: string; value: ShelvedJob };
  /** Beside the sheets, so that a list need not read them. */
  lines: { key: string; value: ShelfLine };
}

/**
 * The jobs this device has opened, for when there is no network. A copy for reading only: entries are in the
 * outbox, whose database this never touches, and a shelf that is full, closed or gone loses nothing.
 *
 * Every call opens and closes the database, so no tab ever stands in another's way.
 */
export function createShelf(env: { nowMs: () => number }): Shelf {
  const use = async <T>(work: (db: IDBPDatabase<Shape>) => Promise<T>): Promise<T> => {
    const opening = openDB<Shape>('fitwright-shelf', 1, {
      upgrade(db) {
        db.createObjectStore('jobs', { keyPath: 'jobId' });
        db.createObjectStore('lines', { keyPath: 'jobId' });
      },
    });
    const db = await inTime(opening);
    try {
      return await work(db);
    } finally {
      db.close();
    }
  };
  return {
    put: ({ jobId, sheet, chosen }) =>
      use(async (db) => {
        const tx = db.transaction(['jobs', 'lines'], 'readwrite');
        const keptAtMs = env.nowMs();
        await tx.objectStore('jobs').put({ jobId, sheet, chosen, keptAtMs });
        const { name, number } = sheet.job;
        await tx.objectStore('lines').put({ jobId, name, number, keptAtMs });
        const lines = await tx.objectStore('lines').getAll();
        const oldest = lines.sort((a, b) => b.keptAtMs - a.keptAtMs).slice(jobsMost);
        for (const line of oldest) {
          await tx.objectStore('jobs').delete(line.jobId);
          await tx.objectStore('lines').delete(line.jobId);
        }
        await tx.done;
      }),
    get: (jobId) =>
      use(async (db) => {
        const job = await db.get('jobs', jobId);
        return job === undefined ? null : { ...job, sheet: asNow(job.sheet) };
      }),
    list: () =>
      use(async (db) =>
        (await db.getAll('lines')).sort((a, b) => b.keptAtMs - a.keptAtMs || b.number - a.number),
      ),
  };
}

/** An older tab that holds the database open must not hang this one. */
async function inTime(opening: Promise<IDBPDatabase<Shape>>): Promise<IDBPDatabase<Shape>> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const late = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(new Error('the shelf did not open in time')), openWithinMs);
  });
  try {
    return await Promise.race([opening, late]);
  } catch (error) {
    opening.then(
      (db) => db.close(),
      () => undefined,
    );
    throw error;
  } finally {
    clearTimeout(timer);
  }
}
