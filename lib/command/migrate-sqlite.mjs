import { randomUUID } from 'node:crypto';
import { existsSync, rmSync, statSync } from 'node:fs';
import { copyNotebook } from './copy-notebook.mjs';
import { prepareDataFolder } from './data-folder.mjs';
import { pendingMigrations } from './migrations.mjs';
import { markNotebook, refuseLostNotebook } from './notebook-marker.mjs';
import { openSqlite, rows, sqliteRefusal, value } from './open-sqlite.mjs';
import { Refusal } from './refusal.mjs';

/** As Prisma's CLI makes it; that CLI also writes its moments as milliseconds since 1970. */
const table = `CREATE TABLE IF NOT EXISTS "_prisma_migrations" (
    "id"                    TEXT PRIMARY KEY NOT NULL,
    "checksum"              TEXT NOT NULL,
    "finished_at"           DATETIME,
    "migration_name"        TEXT NOT NULL,
    "logs"                  TEXT,
    "rolled_back_at"        DATETIME,
    "started_at"            DATETIME NOT NULL DEFAULT current_timestamp,
    "applied_steps_count"   INTEGER UNSIGNED NOT NULL DEFAULT 0
)`;

/**
 * @param {import('./database-url.mjs').SqliteDatabase} database
 * @param {readonly import('./migrations.mjs').Migration[]} known
 * @returns {Promise<{ applied: string[], backup: string | null }>}
 * @throws {Refusal}
 */
export async function migrateSqlite(database, known) {
  prepareDataFolder(database.folder);
  refuseLostNotebook(database);
  const isNew = !existsSync(database.file) || statSync(database.file).size === 0;
  const db = await openSqlite(database.file);
  let outcome;
  try {
    outcome = await bringUpToDate(db, database, known);
  } catch (error) {
    throw sqliteRefusal(error, database.file);
  } finally {
    db.close();
    if (isNew && outcome === undefined) removeNew(database.file);
  }
  markNotebook(database);
  return outcome;
}

async function bringUpToDate(db, database, known) {
  refuseForeign(db, database.file);
  const hasTables = value(db, 'SELECT count(*) FROM sqlite_master') > 0;
  const pending = pendingMigrations(known, appliedIn(db));
  const backup =
    hasTables && pending.length > 0
      ? await copyNotebook(db, database.folder, 'before-update')
      : null;
  if (value(db, 'PRAGMA journal_mode=WAL') !== 'wal') {
    throw new Refusal(
      `${database.folder} is on a file system that cannot keep a notebook safely (no write-ahead log). Choose another place: DATABASE_URL=file:/folder/fitwright.db`,
    );
  }
  return { applied: pending.length === 0 ? [] : applyAll(db, known), backup };
}

/** Reads again what is pending once it holds the write lock: another start may have been quicker. */
function applyAll(db, known) {
  // Rebuilding a table needs this off, and inside a transaction it can no longer be switched.
  db.exec('PRAGMA foreign_keys=OFF');
  db.exec('BEGIN IMMEDIATE');
  try {
    db.exec(table);
    const pending = pendingMigrations(known, appliedIn(db));
    for (const migration of pending) apply(db, migration);
    const broken = rows(db, 'PRAGMA foreign_key_check');
    if (broken.length > 0) throw refuseFailed(pending.at(-1)?.name, 'rows point at missing rows');
    db.exec('COMMIT');
    return pending.map(({ name }) => name);
  } catch (error) {
    if (db.inTransaction) db.exec('ROLLBACK');
    throw error;
  }
}

function apply(db, { name, sql, checksum }) {
  const started = Date.now();
  try {
    db.exec(sql);
  } catch (error) {
    throw refuseFailed(name, error.message);
  }
  if (!db.inTransaction) throw refuseFailed(name, 'it ends the transaction it is run in');
  db.prepare(
    `INSERT INTO "_prisma_migrations"
       ("id", "checksum", "finished_at", "migration_name", "started_at", "applied_steps_count")
     VALUES (?, ?, ?, ?, ?, 1)`,
  ).run(randomUUID(), checksum, Date.now(), name, started);
}

function appliedIn(db) {
  return hasLedger(db) ? rows(db, 'SELECT * FROM "_prisma_migrations"') : [];
}

function hasLedger(db) {
  return value(db, `SELECT count(*) FROM sqlite_master WHERE name = '_prisma_migrations'`) === 1;
}

function refuseForeign(db, file) {
  if (hasLedger(db) || value(db, 'SELECT count(*) FROM sqlite_master') === 0) return;
  throw new Refusal(
    `${file} is a database of another program. It was not changed. Name a file of its own for the notebook in DATABASE_URL.`,
  );
}

function refuseFailed(name, why) {
  return new Refusal(
    `The change "${name}" to the notebook's layout failed (${why}). The notebook is as it was before. Go back to the version that ran until now, and report this sentence.`,
  );
}

function removeNew(file) {
  for (const end of ['', '-wal', '-shm']) rmSync(file + end, { force: true });
}
