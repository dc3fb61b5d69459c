// Puts a backup in the notebook's place and keeps what was there.
import { existsSync, mkdirSync, realpathSync, renameSync, rmSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { requireSound } from './copy-notebook.mjs';
import { prepareDataFolder } from './data-folder.mjs';
import { databaseUrl } from './database-url.mjs';
import { pendingMigrations, readMigrations } from './migrations.mjs';
import { markNotebook } from './notebook-marker.mjs';
import { lockNotebook } from './notebook-lock.mjs';
import { openSqlite, rows } from './open-sqlite.mjs';
import { Refusal } from './refusal.mjs';
import { runAsCommand } from './run-as-command.mjs';
import { moveDurably } from './write-durably.mjs';

/**
 * @param {string} from the backup; it is read, not moved
 * @param {string} [url] as DATABASE_URL
 * @returns {Promise<{ file: string, replaced: string | null }>} where the notebook now is, and where
 *   the one it replaced was put
 * @throws {Refusal} when the backup is damaged, is no notebook or is from a newer version, or when
 *   the server is running
 */
export async function restore(from, url) {
  const database = databaseUrl(url);
  if (database.provider === 'postgresql') {
    throw new Refusal(
      `The notebook is kept in PostgreSQL, which has its own tool: pg_restore --clean --dbname=${database.name} FILE`,
    );
  }
  if (!existsSync(from)) throw new Refusal(`There is no file ${from}. Nothing was changed.`);
  prepareDataFolder(database.folder);
  if (existsSync(database.file) && realpathSync(from) === realpathSync(database.file)) {
    throw new Refusal(`${from} is the notebook itself. Nothing was changed. Name a backup.`);
  }
  const release = await lockNotebook(database.folder, 'restoring');
  try {
    const ready = `${database.file}.part`;
    await copySound(from, ready);
    const replaced = setAside(database);
    moveDurably(ready, database.file);
    markNotebook(database);
    return { file: database.file, replaced };
  } finally {
    release();
  }
}

/** One whole file, whatever state `from` and its log were in. */
async function copySound(from, to) {
  await requireSound(from);
  rmSync(to, { force: true });
  const db = await openSqlite(from);
  try {
    refuseStrange(db, from);
    rows(db, 'VACUUM INTO ?', to);
  } finally {
    db.close();
  }
}

function refuseStrange(db, from) {
  const ledger = rows(db, `SELECT 1 FROM sqlite_master WHERE name = '_prisma_migrations'`);
  if (ledger.length === 0) {
    throw new Refusal(
      `${from} is a database, but not a notebook of Fitwright. Nothing was changed.`,
    );
  }
  pendingMigrations(readMigrations('sqlite'), rows(db, 'SELECT * FROM "_prisma_migrations"'));
}

function setAside({ file, folder }) {
  if (!existsSync(file)) {
    for (const end of ['-wal', '-shm']) rmSync(file + end, { force: true });
    return null;
  }
  mkdirSync(join(folder, 'backups'), { recursive: true, mode: 0o700 });
  const stamp = new Date().toISOString().replaceAll(/[-:.]/g, '');
  const replaced = join(folder, 'backups', `replaced-${stamp}.db`);
  for (const end of ['-wal', '-shm', '']) {
    if (existsSync(file + end)) renameSync(file + end, replaced + end);
  }
  return replaced;
}

await runAsCommand(import.meta.url, async () => {
  const from = process.argv[2];
  if (from === undefined) throw new Refusal('Name the backup: npm run restore -- FILE');
  const { file, replaced } = await restore(resolve(process.env.INIT_CWD ?? '.', from));
  if (replaced !== null) console.log(`What was there is kept as ${replaced}`);
  console.log(`Restored to ${file}; start Fitwright as usual.`);
});
