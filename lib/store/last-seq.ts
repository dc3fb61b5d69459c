import { store } from './client';

/** The number of the newest line of the change log; 0 in an empty notebook. */
export async function lastSeq(): Promise<number> {
  const { read } = await store();
  const rows = await read('SELECT coalesce(max("seq"), 0) FROM "ChangeLog"');
  return rows[0]![0] as number;
}
