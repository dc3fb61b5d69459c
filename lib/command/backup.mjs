// Copies the notebook to backups/ in the data folder, safely while it is in use.
import { existsSync } from 'node:fs';
import { copyNotebook } from './copy-notebook.mjs';
import { databaseUrl } from './database-url.mjs';
import { openSqlite } from './open-sqlite.mjs';
import { Refusal } from './refusal.mjs';
import { runAsCommand } from './run-as-command.mjs';

/**
 * @param {string} [url] as DATABASE_URL
 * @returns {Promise<string>} the file made
 * @throws {Refusal} when there is no notebook, it is kept in PostgreSQL, or no copy can be made
 */
export async function backup(url) {
  const database = databaseUrl(url);
  if (database.provider === 'postgresql') {
    throw new Refusal(
      `The notebook is kept in PostgreSQL, which has its own tool: pg_dump --format=custom --file=notebook.dump ${database.name}`,
    );
  }
  if (!existsSync(database.file)) {
    throw new Refusal(`There is no notebook at ${database.file} yet, so there is nothing to copy.`);
  }
  const db = await openSqlite(database.file);
  try {
    return await copyNotebook(db, database.folder, 'backup');
  } finally {
    db.close();
  }
}

await runAsCommand(import.meta.url, async () => {
  console.log(`Copied to ${await backup()}`);
});
