import { Refusal } from './refusal.mjs';

const waitMs = 5000;

/**
 * Opens a SQLite file with the raw driver. The durable setting is the driver's own default,
 * `synchronous=FULL`, and a busy file is waited for.
 *
 * @param {string} file
 * @param {number} [timeoutMs]
 * @returns {Promise<import('libsql').Database>}
 * @throws {Refusal} when the file cannot be opened, or is not a SQLite database
 */
export async function openSqlite(file, timeoutMs = waitMs) {
  const { default: Driver } = await import('libsql');
  let db;
  try {
    db = new Driver(file, { timeout: timeoutMs });
    rows(db, 'SELECT count(*) FROM sqlite_master');
    return db;
  } catch (error) {
    db?.close();
    throw sqliteRefusal(error, file);
  }
}

/** @returns {Record<string, any>[]} all rows, without the driver's own note of the time taken */
export function rows(db, sql, ...values) {
  return db.prepare(sql).all(...values);
}

/** @returns {any} the first column of the first row */
export function value(db, sql) {
  return Object.values(rows(db, sql)[0] ?? {})[0];
}

/** Puts the driver's errors that a person can act on into words; any other is handed back as it is. */
export function sqliteRefusal(error, file) {
  const code = String(error?.code ?? '');
  const text = String(error?.message ?? error);
  if (code.startsWith('SQLITE_NOTADB') || code.startsWith('SQLITE_CORRUPT')) {
    return new Refusal(
      `${file} is damaged or is not a notebook. It was not changed. Restore a backup with: npm run restore -- FILE`,
    );
  }
  if (code.startsWith('SQLITE_BUSY') || code.startsWith('SQLITE_LOCKED')) {
    return new Refusal(
      `${file} is in use by another program and stayed so for ${waitMs / 1000} seconds. Nothing was changed. Close that program and start again.`,
    );
  }
  if (/unable to open|readonly|read-only/i.test(text) || code.startsWith('SQLITE_CANTOPEN')) {
    return new Refusal(
      `${file} cannot be opened for writing. Give this account the right to write there, or name another file in DATABASE_URL.`,
    );
  }
  if (code.startsWith('SQLITE_FULL')) {
    return new Refusal(
      `The disk of ${file} is full. Nothing was changed. Make room and start again.`,
    );
  }
  return error;
}
