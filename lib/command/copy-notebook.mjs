import { existsSync, mkdirSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { openSqlite, rows, sqliteRefusal, value } from './open-sqlite.mjs';
import { Refusal } from './refusal.mjs';
import { moveDurably } from './write-durably.mjs';

const keep = 14;

/**
 * Copies the notebook to `backups/` in its folder, as one whole file, while others may be writing,
 * and keeps the newest fourteen copies of this kind.
 *
 * The copy is made by SQLite (VACUUM INTO), checked, and only then given its name: a file in
 * `backups/` is never half a copy.
 *
 * @param {import('libsql').Database} db open, and not in a transaction
 * @param {string} folder the data folder
 * @param {'backup' | 'before-update'} kind
 * @returns {Promise<string>} the file made
 * @throws {Refusal} when no sound copy can be made
 */
export async function copyNotebook(db, folder, kind) {
  const backups = join(folder, 'backups');
  const name = `${kind}-${new Date().toISOString().replaceAll(/[-:.]/g, '')}.db`;
  const [file, part] = [join(backups, name), join(backups, `${name}.part`)];
  try {
    mkdirSync(backups, { recursive: true, mode: 0o700 });
    rmSync(part, { force: true });
    rows(db, 'VACUUM INTO ?', part);
    await requireSound(part);
    moveDurably(part, file);
  } catch (error) {
    if (existsSync(part)) rmSync(part);
    throw new Refusal(
      `No backup could be written to ${backups} (${error.message}). The notebook was not changed. Make room or give the right to write there, and start again.`,
    );
  }
  dropOldest(backups, kind);
  return file;
}

/** @throws {Refusal} when SQLite's own check of the whole file finds anything */
export async function requireSound(file) {
  const db = await openSqlite(file);
  try {
    const found = value(db, 'PRAGMA integrity_check');
    if (found !== 'ok') throw new Refusal(`${file} is damaged: ${found}.`);
  } catch (error) {
    throw sqliteRefusal(error, file);
  } finally {
    db.close();
  }
}

function dropOldest(backups, kind) {
  const copies = readdirSync(backups).filter(
    (name) => name.startsWith(`${kind}-`) && name.endsWith('.db'),
  );
  for (const name of copies.sort().slice(0, -keep)) rmSync(join(backups, name));
}
