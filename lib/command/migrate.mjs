// Brings the notebook's layout up to date, offline. Run by itself, it uses DATABASE_URL.
import { databaseUrl } from './database-url.mjs';
import { migratePostgresql } from './migrate-postgresql.mjs';
import { migrateSqlite } from './migrate-sqlite.mjs';
import { readMigrations } from './migrations.mjs';
import { runAsCommand } from './run-as-command.mjs';

/**
 * Applies what prisma/<provider>/migrations holds and the notebook does not have: all of it in one
 * transaction, so that a failure leaves the notebook exactly as it was, and never half-way between
 * two versions. Kept in Prisma's own `_prisma_migrations` table. Before an existing SQLite file is
 * changed, a copy goes to `backups/` beside it.
 *
 * @param {string} [url] as DATABASE_URL
 * @param {string} [folder] the folder of both providers' migrations, `prisma` if left out
 * @returns {Promise<{ applied: string[], backup: string | null }>} names of what was applied now
 * @throws {import('./refusal.mjs').Refusal} in words, when it must not or cannot
 */
export async function migrate(url, folder) {
  const database = databaseUrl(url);
  const known = readMigrations(database.provider, folder);
  return database.provider === 'sqlite'
    ? migrateSqlite(database, known)
    : migratePostgresql(database, known);
}

await runAsCommand(import.meta.url, async () => {
  const { applied, backup } = await migrate();
  if (backup !== null) console.log(`Backup before the change: ${backup}`);
  console.log(applied.length === 0 ? 'Nothing to do.' : `Applied ${applied.join(', ')}.`);
});
