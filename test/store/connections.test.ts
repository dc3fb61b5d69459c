import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Libsql from 'libsql';
import { afterAll, describe, expect, it } from 'vitest';
import { closeStore, store } from '@/lib/store/client';
import { findThings } from '@/lib/store/find-things';
import { makeThing } from '@/lib/store/make-thing';
import { SqlitePool, sqliteSettings } from '@/lib/store/sqlite-pool';
import { transact } from '@/lib/store/transact';
import { uuidv7 } from '@/lib/store/uuid';
import { newGauge, newJob, who } from './a-job';

afterAll(closeStore);

const onSqlite = (process.env['TEST_DATABASE'] ?? 'sqlite') === 'sqlite';

describe('the connections', () => {
  it('are all durable, however many are opened at once, before and after transactions', async () => {
    const { settings, prisma, read } = await store();
    await Promise.all([
      ...Array.from({ length: 12 }, () => makeThing('gauge', newGauge(), who)),
      ...Array.from({ length: 12 }, () => prisma.gauge.count()),
      ...Array.from({ length: 12 }, () => read('SELECT count(*) FROM "Gauge"')),
    ]);
    const found = await settings();
    expect(found.length).toBeGreaterThan(1);
    for (const one of found) {
      expect(one).toEqual(onSqlite ? sqliteSettings : { fsync: 'on', synchronous_commit: 'on' });
    }
  });

  it('refuse a row that points at nothing', async () => {
    const { write } = await store();
    const sql = `INSERT INTO "Part" ("id", "createdAt", "jobId", "position", "name", "prefix", "quantity")
      VALUES ($1, '', $1, 0, '', '', 1)`;
    await expect(write(sql, [uuidv7()])).rejects.toThrow(/foreign key/i);
  });

  it('keep all of a transaction or none', async () => {
    const job = newJob();
    const failing = transact(async (transaction) => {
      await transaction.person.create({ data: { id: job.id, createdAt: '', name: 'half' } });
      throw new Error('in the middle');
    });
    await expect(failing).rejects.toThrow('in the middle');
    expect(await findThings('person', { id: job.id })).toEqual([]);
  });

  it('go on after a statement that failed', async () => {
    const { write, read } = await store();
    const sql = 'INSERT INTO "Person" ("id", "createdAt", "name") VALUES ($1, $2, $3)';
    const id = uuidv7();
    await write(sql, [id, '', 'Ruth']);
    await expect(write(sql, [id, '', 'Ruth'])).rejects.toThrow();
    await write(sql, [uuidv7(), '', 'Ann']);
    expect(await read('SELECT "name" FROM "Person" WHERE "id" = $1', [id])).toEqual([['Ruth']]);
  });

  it('let plain writes and transactions of one process take turns', async () => {
    const { write } = await store();
    const sql = 'INSERT INTO "Person" ("id", "createdAt", "name") VALUES ($1, $2, $3)';
    const begun = Date.now();
    await Promise.all(
      Array.from({ length: 30 }, (_, i) =>
        i % 2 === 0 ? makeThing('gauge', newGauge(), who) : write(sql, [uuidv7(), '', 'x']),
      ),
    );
    // A writer that waited for the lock instead of its turn would stand still for the whole timeout.
    expect(Date.now() - begun).toBeLessThan(sqliteSettings.busy_timeout);
  });
});

if (onSqlite) {
  describe('a transaction', () => {
    it('has the write lock from its first moment, before it has looked at anything', async () => {
      const other = new Libsql(process.env['DATABASE_URL']!.slice('file:'.length));
      const write = () =>
        other.exec(`INSERT INTO "Person" VALUES ('${uuidv7()}', 1, '', NULL, 'x')`);
      await transact(async () => {
        expect(write).toThrow('locked');
      });
      expect(write).not.toThrow();
      other.close();
    });
  });
}

describe('a SQLite pool', () => {
  const folder = mkdtempSync(join(tmpdir(), 'fitwright-pool-'));
  afterAll(() => rmSync(folder, { recursive: true }));

  it('sets and checks each connection it opens, for a transaction or not', async () => {
    const pool = new SqlitePool(join(folder, 'notebook.db'), 6);
    const held = await Promise.all(Array.from({ length: 6 }, (_, i) => pool.acquire(i % 2 === 0)));
    expect(pool.settings()).toEqual(Array(6).fill(sqliteSettings));
    held[0]!.exec('BEGIN IMMEDIATE');
    held[0]!.exec('COMMIT');
    expect(pool.settings()).toEqual(Array(6).fill(sqliteSettings));
    for (const connection of held) pool.release(connection);
    pool.close();
  });

  it('hands out no connection that cannot be made durable', () => {
    // A database in memory has no write-ahead log.
    const pool = new SqlitePool(':memory:');
    expect(() => pool.acquireSync()).toThrow('requires journal_mode = wal, got memory');
    pool.close();
  });
});

if (!onSqlite) {
  describe('a PostgreSQL pool', () => {
    it('waits for the disk though the database is set not to', async () => {
      const { write, read } = await store();
      const [[name]] = (await read('SELECT current_database()')) as [[string]];
      await write(`ALTER DATABASE "${name}" SET synchronous_commit = off`);
      await closeStore();
      const fresh = await store();
      await fresh.read('SELECT 1');
      expect(await fresh.settings()).toEqual([{ fsync: 'on', synchronous_commit: 'on' }]);
    });
  });
}

describe('the store', () => {
  it('says what is wrong with a DATABASE_URL it does not understand', () => {
    const script = `import('./lib/store/client').then(({ store }) => store()).catch((e) => console.log(e.message))`;
    const { stdout } = spawnSync(process.execPath, ['--import', 'tsx', '-e', script], {
      env: { ...process.env, DATABASE_URL: 'mysql://x' },
      encoding: 'utf8',
    });
    expect(stdout).toContain('requires DATABASE_URL to begin with file: or postgresql://');
  });
});
