import type { Change } from '@/lib/schema/change';
import { store } from './client';
import type { Database } from './database';
import { rowJson } from './row-json';
import { correctionTable, readingTable } from './tables';

/**
 * The lines of the change log after `seq`, oldest first, at most `limit` of them. With a job, only its
 * lines and those of no job (gauges, people, settings).
 *
 * A number once seen is never followed by a smaller one: the lines come in the order of commit.
 */
export async function changesAfter(
  seq: number,
  limit: number,
  jobId?: string | undefined,
): Promise<Change[]> {
  const { engine, read } = await store();
  const rows =
    jobId === undefined
      ? await read(statements(engine).all, [seq, limit])
      : await read(statements(engine).ofJob, [seq, limit, jobId]);
  return rows.map((row) => {
    const [number, at, personId, deviceId, job, thing, thingId, act, after] = row as Line;
    const known = { seq: number, at, personId, deviceId, jobId: job, thing, thingId, act };
    return { ...known, after: JSON.parse(after) as Change['after'] };
  });
}

type Line = [
  number,
  string,
  string | null,
  string,
  string | null,
  Change['thing'],
  string,
  Change['act'],
  string,
];

type Statements = { all: string; ofJob: string };
const made: Partial<Record<Database['engine'], Statements>> = {};

function statements(engine: Database['engine']): Statements {
  return (made[engine] ??= {
    all: select(engine, pick('true')),
    ofJob: select(engine, `${pick('"jobId" = $3')} UNION ALL ${pick('"jobId" IS NULL')}`),
  });
}

function pick(condition: string): string {
  return `SELECT * FROM
    (SELECT * FROM "ChangeLog" WHERE "seq" > $1 AND ${condition} ORDER BY "seq" LIMIT $2) q`;
}

function select(engine: Database['engine'], lines: string): string {
  const text = (json: string) => (engine === 'sqlite' ? json : `${json}::text`);
  const row = (table: typeof readingTable) =>
    `(SELECT ${text(rowJson(engine, table, 'r'))} FROM "${table.name}" r WHERE r."id" = c."thingId")`;
  return `SELECT c."seq", c."at", c."personId", c."deviceId", c."jobId", c."thing", c."thingId", c."act",
      CASE c."thing" WHEN 'reading' THEN ${row(readingTable)}
                     WHEN 'correction' THEN ${row(correctionTable)}
                     ELSE c."after" END
    FROM (${lines}) c ORDER BY c."seq" LIMIT $2`;
}
