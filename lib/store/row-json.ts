import type { Database } from './database';
import type { Column, Table } from './tables';

type Engine = Database['engine'];

/**
 * The SQL expression that gives one row of `alias` as a JSON object with the columns of `table`.
 *
 * Both engines write whole numbers with all their figures, so that a length comes back to the picometre,
 * and both then say the same row in the same words.
 */
export function rowJson(engine: Engine, table: Table, alias: string): string {
  const pairs = table.columns.map((column) => `'${column.name}', ${value(engine, column, alias)}`);
  const build = engine === 'sqlite' ? 'json_object' : 'json_build_object';
  return `${build}(${pairs.join(', ')})`;
}

/** The SQL expression that gives all rows of `table` where `condition` (of `t`) holds, as one JSON array. */
export function rowsJson(engine: Engine, table: Table, condition: string): string {
  const row = rowJson(engine, table, 't');
  const order = table.order.map((name) => orderBy(engine, table, name)).join(', ');
  const all =
    engine === 'sqlite'
      ? `'[' || coalesce(group_concat(${row}, ',' ORDER BY ${order}), '') || ']'`
      : `coalesce(json_agg(${row} ORDER BY ${order}), '[]')`;
  return `(SELECT ${all} FROM "${table.name}" t WHERE ${condition})`;
}

/** Text is ordered by its bytes on both engines, whatever language a database was made in. */
function orderBy(engine: Engine, table: Table, name: string): string {
  const isText = table.columns.find((column) => column.name === name)?.as === 'text';
  return engine === 'postgresql' && isText ? `t."${name}" COLLATE "C"` : `t."${name}"`;
}

function value(engine: Engine, { name, as, sql }: Column, alias: string): string {
  const column = sql?.(alias) ?? `${alias}."${name}"`;
  if (engine === 'postgresql') return column;
  if (as === 'json') return `json(${column})`;
  if (as === 'boolean') return `json(iif(${column}, 'true', 'false'))`;
  // Left to itself, SQLite writes 15 figures of a double; it takes 17 to have the same one back.
  return as === 'real' ? `iif(${column} IS NULL, NULL, json(printf('%!.17g', ${column})))` : column;
}
