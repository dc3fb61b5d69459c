import { randomUUID } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { basename, join } from 'node:path';
import { Refusal } from './refusal.mjs';
import { writeDurably } from './write-durably.mjs';

const markerName = 'notebook-id';

/**
 * Refuses to begin an empty notebook in a folder where one was begun before: an update, a wrong
 * mount or a slip of the keyboard must not look like an empty shop.
 *
 * @param {import('./database-url.mjs').SqliteDatabase} database
 * @throws {Refusal} when the folder's marker is there and the file it speaks of is not
 */
export function refuseLostNotebook({ file, folder }) {
  const marker = join(folder, markerName);
  if (!existsSync(marker) || hasBytes(file)) return;
  const begun = readFileSync(marker, 'utf8').split('\n')[1] || basename(file);
  if (begun !== basename(file) && hasBytes(join(folder, begun))) {
    throw new Refusal(
      `${folder} already holds the notebook ${begun}; ${basename(file)} is not there. Nothing was made. Correct DATABASE_URL, or give a second notebook a folder of its own.`,
    );
  }
  throw new Refusal(
    `The notebook ${file} is missing, though one was begun in this folder. No empty one was made in its place. ${advice(folder)} To start afresh instead, delete ${marker}.`,
  );
}

/** Leaves the marker beside a notebook that has none. Its first line is the id, its second the file. */
export function markNotebook({ file, folder }) {
  const marker = join(folder, markerName);
  if (existsSync(marker)) return;
  const words =
    'A notebook was begun in this folder. While this file is here, a missing notebook is\n' +
    'reported and never replaced by an empty one. Delete this file to start afresh.\n';
  writeDurably(marker, `${randomUUID()}\n${basename(file)}\n\n${words}`);
}

function hasBytes(file) {
  return (statSync(file, { throwIfNoEntry: false })?.size ?? 0) > 0;
}

function advice(folder) {
  const backups = join(folder, 'backups');
  const newest = existsSync(backups)
    ? readdirSync(backups)
        .filter((name) => name.endsWith('.db'))
        .map((name) => join(backups, name))
        .sort((a, b) => statSync(b).mtimeMs - statSync(a).mtimeMs)[0]
    : undefined;
  return newest === undefined
    ? 'Put the file back, or restore a backup with: npm run restore -- FILE.'
    : `Put the file back, or restore the newest backup with: npm run restore -- ${newest}.`;
}
