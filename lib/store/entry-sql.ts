import type { Database } from './database';
import type { EntryKind } from './entry-kinds';
import { rowJson } from './row-json';

type Engine = Database['engine'];

/** The statements that keep entries of one kind and say why others were not kept. */
export type EntrySql = { keep: string; explain: string };

/** What the server adds to each entry. */
const added = ['receivedAt', 'deviceId'];

const made = new Map<string, EntrySql>();

/**
 * $1 is the entries as JSON, each an array: the columns of its kind, then when it came and from which device.
 *
 * `keep`: one statement for them all; it gives id and number of those that were kept, and passes over those
 * whose id or device number is in the book, or which name something that is not.
 *
 * `explain`: gives for each, in order, the row that has its id (JSON), the id that has its device number, and
 * which of the kind's faults it has (counted from 0), each or null.
 */
export function entrySql(engine: Engine, kind: EntryKind): EntrySql {
  const key = `${engine} ${kind.name}`;
  const known = made.get(key);
  if (known !== undefined) return known;
  const fresh = { keep: keep(engine, kind), explain: explain(engine, kind) };
  made.set(key, fresh);
  return fresh;
}

function keep(engine: Engine, kind: EntryKind): string {
  const sent = [...kind.columns.map(({ name }) => name), ...added];
  const fields = fieldsOf(engine, kind);
  const names = [...sent, 'jobId'];
  const values = [...sent.map((name) => fields(`{${name}}`)), kind.jobId];
  const faults = kind.faults.map(({ when }) => fields(`(${when})`)).join(' OR ');
  return `INSERT INTO "${kind.table.name}" (${names.map((name) => `"${name}"`).join(', ')})
    SELECT ${values.join(', ')}
    FROM ${entries(engine, true)} ${fields(kind.joins)}
    WHERE NOT (${faults})
    ${engine === 'postgresql' ? 'ORDER BY e.n' : ''}
    ON CONFLICT DO NOTHING RETURNING "id", "seq"`;
}

function explain(engine: Engine, kind: EntryKind): string {
  const fields = fieldsOf(engine, kind);
  const cases = kind.faults.map(({ when }, i) => `WHEN ${fields(when)} THEN ${i}`).join(' ');
  const row = rowJson(engine, kind.table, 'b');
  return `SELECT
      (SELECT ${engine === 'sqlite' ? row : `(${row})::text`} FROM "${kind.table.name}" b
        WHERE b."id" = ${fields('{id}')}),
      (SELECT b."id" FROM "${kind.table.name}" b
        WHERE b."deviceId" = ${fields('{deviceId}')} AND b."deviceSeq" = ${fields('{deviceSeq}')}),
      CASE ${cases} ELSE NULL END
    FROM ${entries(engine, false)} ${fields(kind.joins)} ORDER BY e.n`;
}

/**
 * The entries as rows (v, n). SQLite takes each apart once and in order (LIMIT keeps the subquery whole).
 * On PostgreSQL a statement that keeps takes the writers' lock first, before any row: two that hold one
 * another's ids would otherwise wait for one another.
 */
function entries(engine: Engine, keeps: boolean): string {
  if (engine === 'sqlite') return `(SELECT value AS v, key AS n FROM json_each($1) LIMIT -1) e`;
  const turn = keeps ? '(SELECT pg_advisory_xact_lock(41804180)) turn CROSS JOIN ' : '';
  return `${turn}jsonb_array_elements($1::jsonb) WITH ORDINALITY AS e(v, n)`;
}

/** Puts for {field} the SQL that takes it out of an entry. */
function fieldsOf(engine: Engine, { columns }: EntryKind): (sql: string) => string {
  const all = [...columns, ...added.map((name) => ({ name, as: 'text' }))];
  const at = new Map(all.map((column, i) => [column.name, { ...column, i }]));
  return (sql) =>
    sql.replaceAll(/\{(\w+)\}/g, (_, name: string) => {
      const { i, as } = at.get(name)!;
      const field = `(e.v->>${i})`;
      return engine === 'postgresql' && as === 'integer' ? `${field}::bigint` : field;
    });
}
