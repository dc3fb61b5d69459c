import type { Database } from './database';
import { openPostgresql } from './open-postgresql';
import { openSqlite } from './open-sqlite';

/** Kept on the process, not in this module: a development server loads modules anew at each change. */
const shared = globalThis as { fitwrightStore?: Promise<Database> | undefined };

/**
 * The one open notebook of this process; opened when first asked for.
 *
 * `DATABASE_URL` says where: `postgresql://...`, or `file:` and a path; nothing is
 * `file:data/fitwright.db` in the working folder. A failed opening is tried again at the next call.
 */
export function store(): Promise<Database> {
  shared.fitwrightStore ??= open().catch((error: unknown) => {
    shared.fitwrightStore = undefined;
    throw error;
  });
  return shared.fitwrightStore;
}

/** Ends the connections; the next call of `store` opens them again. */
export async function closeStore(): Promise<void> {
  const opened = shared.fitwrightStore;
  shared.fitwrightStore = undefined;
  await (await opened)?.close();
}

async function open(): Promise<Database> {
  const url = process.env['DATABASE_URL'] || 'file:data/fitwright.db';
  if (/^postgres(ql)?:\/\//.test(url)) return openPostgresql(url);
  if (url.startsWith('file:')) return openSqlite(url);
  throw new Error('store requires DATABASE_URL to begin with file: or postgresql://');
}
