import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Refusal } from './refusal.mjs';
import { root } from './root.mjs';

/**
 * @typedef {{ name: string, sql: string, checksum: string }} Migration
 * @typedef {{ migration_name: string, checksum: string, finished_at: unknown, rolled_back_at: unknown }} AppliedRow
 *   a row of `_prisma_migrations`
 */

/**
 * The migrations of this program, oldest first, from the folder layout that Prisma's tools use:
 * `<provider>/migrations/<name>/migration.sql`. The checksum is SHA-256 over the file as Prisma
 * takes it, with line ends made LF so that a checkout on Windows has the same one.
 *
 * @param {'sqlite' | 'postgresql'} provider
 * @param {string} [folder] the folder of both providers
 * @returns {Migration[]}
 */
export function readMigrations(provider, folder = join(root, 'prisma')) {
  const home = join(folder, provider, 'migrations');
  return readdirSync(home)
    .filter((name) => existsSync(join(home, name, 'migration.sql')))
    .sort()
    .map((name) => {
      const sql = readFileSync(join(home, name, 'migration.sql'), 'utf8').replaceAll('\r\n', '\n');
      return { name, sql, checksum: createHash('sha256').update(sql).digest('hex') };
    });
}

/**
 * What of `known` the notebook does not have yet.
 *
 * @param {readonly Migration[]} known
 * @param {readonly AppliedRow[]} applied
 * @returns {Migration[]}
 * @throws {Refusal} when the notebook has a migration that is unknown, different or unfinished
 */
export function pendingMigrations(known, applied) {
  const kept = applied.filter((row) => row.rolled_back_at === null);
  for (const row of kept) refuseStranger(row, known);
  const names = new Set(kept.map((row) => row.migration_name));
  return known.filter(({ name }) => !names.has(name));
}

function refuseStranger(row, known) {
  const name = row.migration_name;
  const own = known.find((migration) => migration.name === name);
  if (own === undefined) {
    throw new Refusal(
      `This notebook was last opened by a newer Fitwright, which made the change "${name}" to its layout. Nothing was touched. Start that newer version, or restore a backup from before it.`,
    );
  }
  if (row.finished_at === null) {
    throw new Refusal(
      `The change "${name}" to the notebook's layout was begun by another tool and never finished. Nothing was touched. Restore the backup from before it.`,
    );
  }
  if (own.checksum !== row.checksum) {
    throw new Refusal(
      `The file of the change "${name}" is not the one this notebook was made with (its checksum differs). Nothing was touched. Put the original prisma/…/${name}/migration.sql back.`,
    );
  }
}
