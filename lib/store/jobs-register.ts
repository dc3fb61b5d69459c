import type { Job } from '@/lib/schema/job';
import { store } from './client';
import type { Database } from './database';
import { rowJson } from './row-json';
import { tables } from './tables';

/** One job as the list of jobs shows it; struck parts, pieces, fits and pairs are not counted. */
export type JobEntry = {
  job: Job;
  parts: number;
  pieces: number;
  /** Pieces of which there is at least one reading. */
  piecesMeasured: number;
  features: number;
  fits: number;
  pairsFinal: number;
  /** When anything in this job was last kept or changed. */
  lastAt: string;
};

/**
 * All jobs, newest first, struck ones among them.
 *
 * Cost: grows with the number of jobs and pieces, not with the number of readings.
 */
export async function jobsRegister(): Promise<JobEntry[]> {
  const { engine, read } = await store();
  const rows = await read((made[engine] ??= statement(engine)));
  return rows.map((row) => {
    const [job, ...counts] = row as [string, ...number[]];
    const [parts, pieces, piecesMeasured, features, fits, pairsFinal] = counts as Counts;
    const lastAt = row.at(-1) as string;
    return {
      job: JSON.parse(job),
      parts,
      pieces,
      piecesMeasured,
      features,
      fits,
      pairsFinal,
      lastAt,
    };
  });
}

type Counts = [number, number, number, number, number, number];
const made: Partial<Record<Database['engine'], string>> = {};

function statement(engine: Database['engine']): string {
  const job = rowJson(engine, tables.job, 'j');
  return `SELECT ${engine === 'sqlite' ? job : `(${job})::text`},
      ${count('Part')}, ${count('Piece')},
      ${count('Piece', `EXISTS (SELECT 1 FROM "Reading" r WHERE r."jobId" = j."id" AND r."pieceId" = t."id")`)},
      ${count('Feature')}, ${count('Fit')}, ${count('Pair', `t."state" = 'final'`)},
      coalesce((SELECT c."at" FROM "ChangeLog" c WHERE c."jobId" = j."id" ORDER BY c."seq" DESC LIMIT 1),
               j."createdAt")
    FROM "Job" j ORDER BY j."number" DESC`;
}

function count(table: string, condition = 'true'): string {
  return `(SELECT count(*) FROM "${table}" t
    WHERE t."jobId" = j."id" AND t."struckAt" IS NULL AND ${condition})`;
}
