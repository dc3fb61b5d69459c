import type { ThingKind } from '@/lib/schema/change';
import type { JobSheet } from '@/lib/schema/sheet';
import { store } from './client';
import type { Database } from './database';
import { rowsJson } from './row-json';
import { correctionTable, readingTable, tables } from './tables';

/**
 * Everything the sheets of one job are drawn from, struck rows among it, and the number of the change-log
 * line it is true at: one statement, so that nothing can change while it is read.
 *
 * Cost: grows with the rows of this job, not with those of others.
 *
 * @returns null where there is no such job
 */
export async function jobSheet(jobId: string): Promise<JobSheet | null> {
  const { engine, read } = await store();
  const [row] = await read((made[engine] ??= statement(engine)), [jobId]);
  const [seq, ...lists] = row as [number, ...string[]];
  const entries = Object.keys(parts(engine)).map((name, i) => [name, JSON.parse(lists[i]!)]);
  const { jobs, ...sheet } = Object.fromEntries(entries) as Omit<JobSheet, 'seq' | 'job'> & {
    jobs: JobSheet['job'][];
  };
  return jobs[0] === undefined ? null : { seq, job: jobs[0], ...sheet };
}

const made: Partial<Record<Database['engine'], string>> = {};

function statement(engine: Database['engine']): string {
  const lists = Object.values(parts(engine)).map((rows) =>
    engine === 'sqlite' ? rows : `${rows}::text`,
  );
  return `SELECT (SELECT coalesce(max("seq"), 0) FROM "ChangeLog"), ${lists.join(', ')}`;
}

/** One that came before its reading does not know its job; the reading it names does. */
const ofReadings = `t."jobId" = $1 OR t."jobId" IS NULL AND EXISTS
  (SELECT 1 FROM "Reading" r WHERE r."id" = t."readingId" AND r."jobId" = $1)`;

/** The lists of the sheet, each as SQL. */
function parts(engine: Database['engine']) {
  const ofJob = (kind: ThingKind) => rowsJson(engine, tables[kind], 't."jobId" = $1');
  return {
    jobs: rowsJson(engine, tables.job, 't."id" = $1'),
    parts: ofJob('part'),
    pieces: ofJob('piece'),
    features: ofJob('feature'),
    fits: ofJob('fit'),
    pairs: ofJob('pair'),
    cuts: ofJob('cut'),
    runs: ofJob('run'),
    runEvents: ofJob('runEvent'),
    departures: ofJob('departure'),
    pictures: ofJob('picture'),
    gauges: rowsJson(engine, tables.gauge, 'true'),
    people: rowsJson(engine, tables.person, 'true'),
    materials: rowsJson(engine, tables.material, 'true'),
    fitRules: rowsJson(engine, tables.fitRule, 'true'),
    readings: rowsJson(engine, readingTable, 't."jobId" = $1'),
    corrections: rowsJson(engine, correctionTable, ofReadings),
  };
}
