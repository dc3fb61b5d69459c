import { randomBytes } from 'node:crypto';
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Client } from 'pg';
import { migrate } from '@/lib/command/migrate.mjs';
import { startPostgres } from './start-postgres.mjs';

/**
 * Vitest's global setup wherever a database is needed: makes one migrated, empty notebook in the
 * database that TEST_DATABASE names (`sqlite` if unset, or `postgresql`), from which each test file
 * then gets its own copy (fresh-database.ts). Everything made is removed at the end.
 */
export default async function setup(): Promise<() => Promise<void>> {
  const wanted = process.env['TEST_DATABASE'] ?? 'sqlite';
  if (wanted === 'sqlite') return sqlite();
  if (wanted === 'postgresql') return postgresql();
  throw new Error(`TEST_DATABASE has to be sqlite or postgresql, got ${wanted}`);
}

async function sqlite() {
  const home = mkdtempSync(join(tmpdir(), 'fitwright-test-'));
  mkdirSync(join(home, 'template'));
  const url = `file:${join(home, 'template', 'fitwright.db')}`;
  await migrate(url);
  process.env['TEST_TEMPLATE'] = url;
  return async () => rmSync(home, { recursive: true, force: true });
}

async function postgresql() {
  const server = await startPostgres();
  const prefix = `fitwright_test_${randomBytes(4).toString('hex')}`;
  const admin = new Client({ connectionString: server.url });
  await admin.connect();
  const url = new URL(server.url);
  url.pathname = `/${prefix}`;
  await admin.query(`CREATE DATABASE ${prefix} ${await order(admin)}`);
  await migrate(url.href);
  process.env['TEST_TEMPLATE'] = url.href;
  process.env['TEST_ADMIN'] = server.url;
  return async () => {
    const made = await admin.query<{ datname: string }>(
      'SELECT datname FROM pg_database WHERE starts_with(datname, $1)',
      [prefix],
    );
    for (const { datname } of made.rows) await admin.query(`DROP DATABASE ${datname} WITH (FORCE)`);
    await admin.end();
    server.stop();
  };
}

/** Sorts text as people do and not by its bytes, as most PostgreSQL servers are set up to. */
async function order(admin: Client): Promise<string> {
  const { rows } = await admin.query<{ n: number }>(
    `SELECT current_setting('server_version_num')::int AS n`,
  );
  const hasIcu = rows[0]!.n >= 150_000;
  return hasIcu ? `TEMPLATE template0 LOCALE_PROVIDER icu ICU_LOCALE 'en' ENCODING UTF8` : '';
}
