import type { ThingKind } from '@/lib/schema/change';
import { store } from './client';
import { rowsJson } from './row-json';
import { tables } from './tables';
import type { Row } from './thing-types';

/** Which rows: all of them, one, or those of one job. */
export type Which = { id: string } | { jobId: string } | Record<never, never>;

/**
 * The rows of one kind, struck ones among them, in the order of their sheet.
 *
 * @example
 * await findThings('feature', { jobId });
 */
export async function findThings<Kind extends ThingKind>(
  kind: Kind,
  which: Which = {},
): Promise<Row<Kind>[]> {
  const { engine, read } = await store();
  const [column, value] = Object.entries(which)[0] ?? [];
  const condition = column === undefined ? 'true' : `t."${column}" = $1`;
  const sql = `SELECT ${asText(engine, rowsJson(engine, tables[kind], condition))}`;
  const rows = await read(sql, value === undefined ? [] : [value as string]);
  return JSON.parse(rows[0]![0] as string) as Row<Kind>[];
}

function asText(engine: 'sqlite' | 'postgresql', json: string): string {
  return engine === 'sqlite' ? json : `${json}::text`;
}
