import { randomBytes } from 'node:crypto';
import { cpSync, mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Client } from 'pg';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { migrate } from '@/lib/command/migrate.mjs';
import { root } from '@/lib/command/root.mjs';
import { startPostgres } from '../../setup/start-postgres.mjs';
import { temporaryFolder } from '../../setup/temporary-folder';

// A server of its own, whatever TEST_DATABASE says: some of these tests change its settings.
let server: { url: string; stop: () => void };
beforeAll(async () => {
  server = await startPostgres({ log_min_messages: 'fatal' });
});
afterAll(() => server.stop());

async function query<Row>(url: string, ...texts: string[]): Promise<Row[]> {
  const client = new Client({ connectionString: url });
  await client.connect();
  let rows: Row[] = [];
  for (const text of texts) rows = (await client.query(text)).rows as Row[];
  await client.end();
  return rows;
}

async function emptyDatabase(options = ''): Promise<string> {
  const name = `t_${randomBytes(5).toString('hex')}`;
  await query(server.url, `CREATE DATABASE ${name} ${options}`);
  const url = new URL(server.url);
  url.pathname = `/${name}`;
  return url.href;
}

function migrations(extra: Record<string, string> = {}): string {
  const folder = join(temporaryFolder(), 'prisma');
  cpSync(join(root, 'prisma'), folder, { recursive: true });
  for (const [name, sql] of Object.entries(extra)) {
    mkdirSync(join(folder, 'postgresql/migrations', name));
    writeFileSync(join(folder, 'postgresql/migrations', name, 'migration.sql'), sql);
  }
  return folder;
}

const ledger = `SELECT migration_name AS name, finished_at >= started_at AS done,
  applied_steps_count AS steps, length(checksum) AS digits FROM _prisma_migrations ORDER BY 1`;
const tables = `SELECT tablename AS name FROM pg_tables WHERE schemaname = 'public' ORDER BY 1`;

/** Every migration there is, in order. */
const own = readdirSync(join(root, 'prisma/postgresql/migrations'))
  .filter((name) => /^\d+_/.test(name))
  .sort();

describe('migrate, on PostgreSQL', () => {
  it("applies every migration once and keeps its ledger in Prisma's table", async () => {
    const url = await emptyDatabase();
    expect(await migrate(url)).toEqual({ applied: own, backup: null });
    expect(await migrate(url)).toEqual({ applied: [], backup: null });
    const rows = own.map((name) => ({ name, done: true, steps: 1, digits: 64 }));
    expect(await query(url, ledger)).toEqual(rows);
  });

  it('leaves the old notebook untouched when the second of two migrations fails', async () => {
    const url = await emptyDatabase();
    await migrate(url);
    const before = await query(url, tables);
    const folder = migrations({
      '20991230000000_good': 'CREATE TABLE "Good" ("id" TEXT);',
      '20991231000000_bad': 'CREATE TABLE "Bad" ("id" TEXT); INSERT INTO "None" VALUES (1);',
    });
    await expect(migrate(url, folder)).rejects.toThrow(
      /^The change "20991231000000_bad" .* failed .*The notebook is as it was before\./,
    );
    expect(await query(url, tables)).toEqual(before);
    expect(await query(url, ledger)).toHaveLength(own.length);
  });

  it('lets one of several starts at once do the work and the others wait for it', async () => {
    const url = await emptyDatabase();
    const outcomes = await Promise.all([migrate(url), migrate(url), migrate(url)]);
    expect(outcomes.map(({ applied }) => applied.length).sort()).toEqual([0, 0, own.length]);
    expect(await query(url, ledger)).toHaveLength(own.length);
  });

  it("waits for Prisma's own tool, which holds the lock 72707369", async () => {
    const url = await emptyDatabase();
    const other = new Client({ connectionString: url });
    await other.connect();
    await other.query('SELECT pg_advisory_lock(72707369)');
    let isDone = false;
    const migrating = migrate(url).then(() => (isDone = true));
    await new Promise((done) => setTimeout(done, 500));
    expect(isDone).toBe(false);
    await other.query('SELECT pg_advisory_unlock(72707369)');
    await migrating;
    await other.end();
  });

  it('refuses a changed migration and a notebook changed by a newer version', async () => {
    const url = await emptyDatabase();
    await migrate(url, migrations({ '20991231000000_later': 'CREATE TABLE "Later" ("id" TEXT);' }));
    await expect(migrate(url)).rejects.toThrow('last opened by a newer Fitwright');
    await query(url, `DELETE FROM _prisma_migrations WHERE migration_name LIKE '2099%'`);
    await query(url, `UPDATE _prisma_migrations SET checksum = repeat('0', 64)`);
    await expect(migrate(url)).rejects.toThrow('its checksum differs');
  });

  it('refuses a database that holds tables of another program', async () => {
    const url = await emptyDatabase();
    await query(url, 'CREATE TABLE other (a int)');
    await expect(migrate(url)).rejects.toThrow('tables of another program');
    expect(await query(url, tables)).toEqual([{ name: 'other' }]);
  });

  it('refuses fsync = off, and changes nothing', async () => {
    const loose = await startPostgres({ fsync: 'off' });
    try {
      await expect(migrate(loose.url)).rejects.toThrow('fsync = off');
      expect(await query(loose.url, tables)).toEqual([]);
    } finally {
      loose.stop();
    }
  });

  it('refuses synchronous_commit = off, even where only this database has it', async () => {
    const url = await emptyDatabase();
    const name = new URL(url).pathname.slice(1);
    await query(url, `ALTER DATABASE ${name} SET synchronous_commit = off`);
    await expect(migrate(url)).rejects.toThrow('synchronous_commit = off');
    await query(url, `ALTER DATABASE ${name} SET synchronous_commit = local`);
    expect((await migrate(url)).applied).toEqual(own);
  });

  it('refuses a database that cannot hold every sign', async () => {
    const url = await emptyDatabase(
      `TEMPLATE template0 ENCODING SQL_ASCII LC_COLLATE 'C' LC_CTYPE 'C'`,
    );
    await expect(migrate(url)).rejects.toThrow('stores text as SQL_ASCII');
  });

  it('says which right is missing', async () => {
    const url = await emptyDatabase();
    await query(url, `CREATE ROLE ann LOGIN`, 'REVOKE CREATE ON SCHEMA public FROM PUBLIC');
    const asAnn = new URL(url);
    asAnn.username = 'ann';
    await expect(migrate(asAnn.href)).rejects.toThrow(/^ann may not make tables/);
  });

  it('says in one sentence that a database, a server or a name is not there', async () => {
    const absent = new URL(server.url);
    absent.pathname = '/absent';
    await expect(migrate(absent.href)).rejects.toThrow('has no database called absent');
    const deaf = new URL(server.url);
    deaf.port = '9'; // the discard service, which nothing offers here
    await expect(migrate(deaf.href)).rejects.toThrow(
      /^PostgreSQL is not answering at 127\.0\.0\.1:9\/postgres \(ECONNREFUSED\)/,
    );
    const stranger = new URL(server.url);
    stranger.username = 'nobody-here';
    await expect(migrate(stranger.href)).rejects.toThrow('does not let nobody-here in');
  });
});
