import { createHash } from 'node:crypto';
import {
  cpSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import Database from 'libsql';
import { describe, expect, it } from 'vitest';
import { migrate } from '@/lib/command/migrate.mjs';
import { root } from '@/lib/command/root.mjs';
import { temporaryFolder } from '../setup/temporary-folder';

type Notebook = { url: string; file: string; folder: string; migrations: string };

/** The notebook's own migrations plus those given, in a folder of the test. */
function notebook(): Notebook {
  const home = temporaryFolder();
  const migrations = join(home, 'prisma');
  cpSync(join(root, 'prisma'), migrations, { recursive: true });
  const folder = join(home, 'data');
  return {
    url: `file:${folder}/fitwright.db`,
    file: join(folder, 'fitwright.db'),
    folder,
    migrations,
  };
}

function add({ migrations }: Notebook, name: string, sql: string) {
  const folder = join(migrations, 'sqlite/migrations', name);
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, 'migration.sql'), sql);
}

function read<Row>(file: string, sql: string): Row[] {
  const db = new Database(file);
  const rows = db.prepare(sql).all() as Row[];
  db.close();
  return rows;
}

function write(file: string, sql: string) {
  const db = new Database(file);
  db.exec(sql);
  db.close();
}

const tables = (file: string) =>
  read<{ name: string }>(file, `SELECT name FROM sqlite_master ORDER BY name`).map(
    ({ name }) => name,
  );

const person = (id: string) =>
  `INSERT INTO "Person" ("id", "createdAt", "name") VALUES ('${id}', '2026-11-25', 'Ann')`;

/** Every migration there is, in order. */
const own = readdirSync(join(root, 'prisma/sqlite/migrations'))
  .filter((name) => /^\d+_/.test(name))
  .sort();

describe('migrate, on SQLite', () => {
  it('has the same migrations for both databases', () => {
    const others = readdirSync(join(root, 'prisma/postgresql/migrations'));
    expect(others.filter((name) => /^\d+_/.test(name)).sort()).toEqual(own);
  });

  it('makes a new notebook with every migration, in order, and marks its folder', async () => {
    const book = notebook();
    add(book, '20991231000000_next', 'CREATE TABLE "Next" ("id" TEXT);');
    const done = await migrate(book.url, book.migrations);
    expect(done).toEqual({
      applied: [...own, '20991231000000_next'],
      backup: null,
    });
    expect(tables(book.file)).toEqual(expect.arrayContaining(['Job', 'Next', 'Reading']));
    expect(readFileSync(join(book.folder, 'notebook-id'), 'utf8')).toMatch(
      /^[0-9a-f-]{36}\nfitwright\.db\n/,
    );
  });

  it("keeps its ledger in Prisma's table, with the SHA-256 of each file and milliseconds", async () => {
    const book = notebook();
    const from = Date.now();
    await migrate(book.url, book.migrations);
    const sql = readFileSync(
      join(root, 'prisma/sqlite/migrations/20261125090000_first/migration.sql'),
    );
    const [row] = read<Record<string, unknown>>(book.file, 'SELECT * FROM "_prisma_migrations"');
    expect(row).toMatchObject({
      id: expect.stringMatching(/^[0-9a-f-]{36}$/),
      checksum: createHash('sha256').update(sql).digest('hex'),
      migration_name: '20261125090000_first',
      logs: null,
      rolled_back_at: null,
      applied_steps_count: 1,
    });
    expect(row!['started_at']).toBeGreaterThanOrEqual(from);
    expect(row!['finished_at']).toBeGreaterThanOrEqual(row!['started_at'] as number);
    expect(row!['finished_at']).toBeLessThanOrEqual(Date.now());
  });

  it('sets the write-ahead log, which later connections keep', async () => {
    const book = notebook();
    await migrate(book.url, book.migrations);
    expect(read(book.file, 'PRAGMA journal_mode')[0]).toMatchObject({ journal_mode: 'wal' });
  });

  it('does nothing the second time, and makes no backup for it', async () => {
    const book = notebook();
    await migrate(book.url, book.migrations);
    expect(await migrate(book.url, book.migrations)).toEqual({ applied: [], backup: null });
    expect(existsSync(join(book.folder, 'backups'))).toBe(false);
  });

  it('copies an existing notebook before it changes it', async () => {
    const book = notebook();
    await migrate(book.url, book.migrations);
    write(book.file, person('p1'));
    add(book, '20991231000000_next', 'DROP TABLE "Picture"; CREATE TABLE "Next" ("id" TEXT);');
    const { applied, backup } = await migrate(book.url, book.migrations);
    expect(applied).toEqual(['20991231000000_next']);
    expect(backup).toMatch(/backups.before-update-\d{8}T\d{9}Z\.db$/);
    expect(tables(backup!)).toContain('Picture');
    expect(tables(backup!)).not.toContain('Next');
    expect(read(backup!, 'SELECT "id" FROM "Person"')).toMatchObject([{ id: 'p1' }]);
    expect(tables(book.file)).toContain('Next');
  });

  it('keeps the newest fourteen of the copies it made, and no other file', async () => {
    const book = notebook();
    await migrate(book.url, book.migrations);
    const backups = join(book.folder, 'backups');
    mkdirSync(backups);
    for (let day = 10; day < 30; day += 1) {
      writeFileSync(join(backups, `before-update-202501${day}T000000000Z.db`), '');
    }
    writeFileSync(join(backups, 'backup-20240101T000000000Z.db'), '');
    writeFileSync(join(backups, 'holiday.txt'), '');
    add(book, '20991231000000_next', 'CREATE TABLE "Next" ("id" TEXT);');
    await migrate(book.url, book.migrations);
    const left = readdirSync(backups).sort();
    expect(left.slice(0, 2)).toEqual([
      'backup-20240101T000000000Z.db',
      'before-update-20250117T000000000Z.db',
    ]);
    expect(left.filter((name) => name.startsWith('before-update-'))).toHaveLength(14);
    expect(left).toContain('holiday.txt');
  });

  it('leaves the old notebook untouched when the second of two migrations fails', async () => {
    const book = notebook();
    await migrate(book.url, book.migrations);
    write(book.file, person('p1'));
    const before = [
      tables(book.file),
      read(book.file, 'SELECT * FROM "_prisma_migrations"').length,
    ];
    add(book, '20991230000000_good', 'CREATE TABLE "Good" ("id" TEXT); DELETE FROM "Person";');
    add(
      book,
      '20991231000000_bad',
      'CREATE TABLE "Bad" ("id" TEXT); INSERT INTO "None" VALUES (1);',
    );
    await expect(migrate(book.url, book.migrations)).rejects.toThrow(
      /^The change "20991231000000_bad" to the notebook's layout failed \(no such table: None\)\. The notebook is as it was before\./,
    );
    expect([
      tables(book.file),
      read(book.file, 'SELECT * FROM "_prisma_migrations"').length,
    ]).toEqual(before);
    expect(read(book.file, 'SELECT "id" FROM "Person"')).toMatchObject([{ id: 'p1' }]);
  });

  it('leaves no file behind when a new notebook cannot be made', async () => {
    const book = notebook();
    add(book, '20991231000000_bad', 'INSERT INTO "None" VALUES (1);');
    await expect(migrate(book.url, book.migrations)).rejects.toThrow('failed');
    expect(readdirSync(book.folder)).toEqual([]);
  });

  it('refuses a migration that ends its own transaction', async () => {
    const book = notebook();
    add(book, '20991231000000_bad', 'CREATE TABLE "Bad" ("id" TEXT); COMMIT;');
    await expect(migrate(book.url, book.migrations)).rejects.toThrow('ends the transaction');
  });

  it('can rebuild a table that others point at, and refuses rows left pointing nowhere', async () => {
    const book = notebook();
    add(book, '20990101000000_two', 'CREATE TABLE "A" ("id" TEXT PRIMARY KEY); CREATE TABLE "B" ("a" TEXT REFERENCES "A" ("id")); INSERT INTO "A" VALUES (\'1\'); INSERT INTO "B" VALUES (\'1\');'); // prettier-ignore
    await migrate(book.url, book.migrations);
    add(book, '20990102000000_rebuild', 'CREATE TABLE "new_A" ("id" TEXT PRIMARY KEY, "more" TEXT); INSERT INTO "new_A" SELECT "id", NULL FROM "A"; DROP TABLE "A"; ALTER TABLE "new_A" RENAME TO "A";'); // prettier-ignore
    await migrate(book.url, book.migrations);
    expect(read(book.file, 'SELECT * FROM "B"')).toMatchObject([{ a: '1' }]);
    add(book, '20990103000000_orphan', 'DELETE FROM "A";');
    await expect(migrate(book.url, book.migrations)).rejects.toThrow('rows point at missing rows');
    expect(read(book.file, 'SELECT "id" FROM "A"')).toMatchObject([{ id: '1' }]);
  });

  it('refuses a migration file that is not the one the notebook was made with', async () => {
    const book = notebook();
    await migrate(book.url, book.migrations);
    add(book, '20261125090000_first', 'CREATE TABLE "Other" ("id" TEXT);');
    await expect(migrate(book.url, book.migrations)).rejects.toThrow('its checksum differs');
  });

  it('takes a file with the line ends of Windows for the same', async () => {
    const book = notebook();
    await migrate(book.url, book.migrations);
    const file = join(book.migrations, 'sqlite/migrations/20261125090000_first/migration.sql');
    writeFileSync(file, readFileSync(file, 'utf8').replaceAll('\n', '\r\n'));
    expect((await migrate(book.url, book.migrations)).applied).toEqual([]);
  });

  it('refuses a notebook that a newer version has changed, and says so', async () => {
    const book = notebook();
    add(book, '20991231000000_later', 'CREATE TABLE "Later" ("id" TEXT);');
    await migrate(book.url, book.migrations);
    await expect(migrate(book.url)).rejects.toThrow(
      /last opened by a newer Fitwright, which made the change "20991231000000_later"/,
    );
    expect(tables(book.file)).toContain('Later');
  });

  it('refuses a change begun by another tool and not finished, but not one rolled back', async () => {
    const book = notebook();
    await migrate(book.url, book.migrations);
    write(book.file, `UPDATE "_prisma_migrations" SET "finished_at" = NULL`);
    await expect(migrate(book.url)).rejects.toThrow('never finished');
    write(book.file, `UPDATE "_prisma_migrations" SET "finished_at" = 1`);
    write(book.file, `INSERT INTO "_prisma_migrations" ("id", "checksum", "migration_name", "rolled_back_at") VALUES ('x', 'y', 'z', 1)`); // prettier-ignore
    expect((await migrate(book.url)).applied).toEqual([]);
  });

  it('refuses to begin an empty notebook where one was, and names the newest backup', async () => {
    const book = notebook();
    await migrate(book.url, book.migrations);
    const kept = join(book.folder, 'backups', 'backup-20260101T000000000Z.db');
    const older = join(book.folder, 'backups', 'before-update-20250101T000000000Z.db');
    mkdirSync(join(book.folder, 'backups'));
    for (const copy of [kept, older]) cpSync(book.file, copy);
    utimesSync(older, 1, 1);
    writeFileSync(book.file, '');
    await expect(migrate(book.url)).rejects.toThrow(`npm run restore -- ${kept}`);
    await expect(migrate(`file:${book.folder}/other.db`)).rejects.toThrow('is missing');
    expect(existsSync(join(book.folder, 'other.db'))).toBe(false);
  });

  it('refuses a second notebook in the folder of the first', async () => {
    const book = notebook();
    await migrate(book.url, book.migrations);
    await expect(migrate(`file:${book.folder}/other.db`)).rejects.toThrow(
      'already holds the notebook fitwright.db',
    );
    expect(existsSync(join(book.folder, 'other.db'))).toBe(false);
  });

  it('starts afresh once the marker is deleted', async () => {
    const book = notebook();
    mkdirSync(book.folder);
    writeFileSync(join(book.folder, 'notebook-id'), 'an-id\nfitwright.db\n');
    await expect(migrate(book.url)).rejects.toThrow('To start afresh');
    rmSync(join(book.folder, 'notebook-id'));
    expect((await migrate(book.url)).applied).not.toEqual([]);
  });

  it('refuses a database of another program, a damaged file and a folder it cannot write', async () => {
    const folder = temporaryFolder();
    write(join(folder, 'other.db'), 'CREATE TABLE t (a)');
    await expect(migrate(`file:${folder}/other.db`)).rejects.toThrow('of another program');
    writeFileSync(join(folder, 'text.db'), 'Not a database at all. '.repeat(100));
    await expect(migrate(`file:${folder}/text.db`)).rejects.toThrow('damaged or is not a notebook');
    await expect(migrate(`file:${folder}/text.db/sub/x.db`)).rejects.toThrow('cannot be written');
    expect(tables(join(folder, 'other.db'))).toEqual(['t']);
  });

  it('waits for a busy file and then says that it is in use', async () => {
    const book = notebook();
    await migrate(book.url, book.migrations);
    add(book, '20991231000000_next', 'CREATE TABLE "Next" ("id" TEXT);');
    const busy = new Database(book.file);
    busy.exec('BEGIN IMMEDIATE');
    await expect(migrate(book.url, book.migrations)).rejects.toThrow('in use by another program');
    busy.exec('ROLLBACK');
    busy.close();
    expect((await migrate(book.url, book.migrations)).applied).toHaveLength(1);
  }, 20_000);
});
