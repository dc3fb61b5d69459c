import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { openSqlite } from './open-sqlite.mjs';
import { Refusal } from './refusal.mjs';

/**
 * Claims a data folder for this process, so that one notebook file has one server and is never
 * replaced under it. The claim is a lock of the operating system, held through a small file; it ends
 * with the process, however that ends.
 *
 * @param {string} folder
 * @param {string} doing how another process should name this one, e.g. 'serving http://…'
 * @returns {Promise<() => void>} gives the claim back
 * @throws {Refusal} when another process has it
 */
export async function lockNotebook(folder, doing) {
  const note = join(folder, 'server.json');
  let db;
  try {
    db = await openSqlite(join(folder, 'server.lock'), 0);
    db.exec('BEGIN EXCLUSIVE');
  } catch {
    db?.close();
    throw new Refusal(
      `Fitwright is already running on the notebook in ${folder}${holder(note)}. Use that one, or stop it first.`,
    );
  }
  writeFileSync(note, `${JSON.stringify({ pid: process.pid, doing })}\n`);
  return () => {
    rmSync(note, { force: true });
    db.exec('ROLLBACK');
    db.close();
  };
}

function holder(note) {
  try {
    const { pid, doing } = JSON.parse(readFileSync(note, 'utf8'));
    return ` (process ${pid}, ${doing})`;
  } catch {
    return '';
  }
}
