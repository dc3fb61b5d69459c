import { execFileSync, spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'libsql';
import { describe, expect, it, onTestFinished } from 'vitest';
import { backup } from '@/lib/command/backup.mjs';
import { requireSound } from '@/lib/command/copy-notebook.mjs';
import { migrate } from '@/lib/command/migrate.mjs';
import { lockNotebook } from '@/lib/command/notebook-lock.mjs';
import { restore } from '@/lib/command/restore.mjs';
import { root } from '@/lib/command/root.mjs';
import { temporaryFolder } from '../setup/temporary-folder';

async function notebook() {
  const folder = temporaryFolder();
  const url = `file:${folder}/fitwright.db`;
  await migrate(url);
  return { folder, url, file: join(folder, 'fitwright.db') };
}

function person(file: string, id: string) {
  const db = new Database(file);
  db.prepare(`INSERT INTO "Person" ("id", "createdAt", "name") VALUES (?, 'now', 'Ann')`).run(id);
  db.close();
}

/**
 * A notebook and its backup, made as a person makes them: by processes that have ended. The driver
 * holds a connection until its statements are collected as garbage, and one let go in this process
 * after the other was killed would fold the log back.
 */
function notebookOfEndedProcesses() {
  const folder = temporaryFolder();
  const url = `file:${folder}/fitwright.db`;
  const options = { cwd: root, env: { ...process.env, DATABASE_URL: url } };
  for (const name of ['migrate', 'backup']) {
    execFileSync(process.execPath, [`lib/command/${name}.mjs`], options);
  }
  const copies = readdirSync(join(folder, 'backups'));
  return { url, file: join(folder, 'fitwright.db'), copy: join(folder, 'backups', copies[0]!) };
}

/** Adds a person and is killed, so that nothing is folded back from the log into the file. */
async function personInLogOnly(file: string, id: string) {
  const script = `import D from 'libsql'; const db = new D(process.argv[1]);
    db.prepare(\`INSERT INTO "Person" ("id", "createdAt", "name") VALUES (?, 'now', 'Cy')\`)
      .run(process.argv[2]);
    process.kill(process.pid, 'SIGKILL');`;
  const words = ['--input-type=module', '-e', script, file, id];
  await once(spawn(process.execPath, words, { cwd: root }), 'close');
}

function people(file: string) {
  const db = new Database(file);
  const rows = db.prepare(`SELECT "id" FROM "Person" ORDER BY "id"`).all() as { id: string }[];
  db.close();
  return rows.map(({ id }) => id);
}

describe('backup', () => {
  it('makes one whole, sound file while another connection is in the middle of writing', async () => {
    const { url, file } = await notebook();
    person(file, 'p1');
    const writer = new Database(file);
    writer.exec(
      `BEGIN IMMEDIATE; INSERT INTO "Person" ("id", "createdAt", "name") VALUES ('p2', 'now', 'Bo')`,
    );
    const copy = await backup(url);
    writer.exec('COMMIT');
    writer.close();
    expect(copy).toMatch(/backups.backup-\d{8}T\d{9}Z\.db$/);
    expect(people(copy)).toEqual(['p1']);
    expect(people(file)).toEqual(['p1', 'p2']);
    expect(existsSync(`${copy}.part`)).toBe(false);
  });

  it('keeps the newest fourteen', async () => {
    const { url, folder } = await notebook();
    const first = await backup(url);
    for (let n = 0; n < 14; n += 1) await backup(url);
    expect(
      readdirSync(join(folder, 'backups')).filter((name) => name.endsWith('.db')),
    ).toHaveLength(14);
    expect(existsSync(first)).toBe(false);
  });

  it('points to pg_dump for PostgreSQL, and says when there is no notebook', async () => {
    await expect(backup('postgresql://shed/fit')).rejects.toThrow(/pg_dump .* fit$/);
    await expect(backup(`file:${temporaryFolder()}/none.db`)).rejects.toThrow('no notebook');
  });

  it('leaves nothing half made when it cannot write', async () => {
    const { url, folder } = await notebook();
    writeFileSync(join(folder, 'backups'), 'a file where the folder should be');
    await expect(backup(url)).rejects.toThrow('The notebook was not changed');
  });
});

describe('restore', () => {
  it('puts the backup in place and keeps what was there', async () => {
    const { url, file } = await notebook();
    person(file, 'p1');
    const copy = await backup(url);
    person(file, 'p2');
    const done = await restore(copy, url);
    expect(done.file).toBe(file);
    expect(people(file)).toEqual(['p1']);
    expect(people(done.replaced!)).toEqual(['p1', 'p2']);
    expect(existsSync(copy)).toBe(true);
    expect((await migrate(url)).applied).toEqual([]);
  });

  it('keeps with the replaced notebook what only its log holds yet', async () => {
    const { url, file, copy } = notebookOfEndedProcesses();
    await personInLogOnly(file, 'p9');
    expect(existsSync(`${file}-wal`)).toBe(true);
    const { replaced } = await restore(copy, url);
    expect(people(replaced!)).toEqual(['p9']);
    expect(people(file)).toEqual([]);
  });

  it('works where the notebook is lost, and the marker then lets it start again', async () => {
    const { url, file } = await notebook();
    person(file, 'p1');
    const copy = await backup(url);
    rmSync(file);
    await expect(migrate(url)).rejects.toThrow(copy);
    expect(await restore(copy, url)).toEqual({ file, replaced: null });
    expect((await migrate(url)).applied).toEqual([]);
    expect(people(file)).toEqual(['p1']);
  });

  it('does not let the log of a lost notebook play into the one restored', async () => {
    const { url, file, copy } = notebookOfEndedProcesses();
    await personInLogOnly(file, 'p9');
    rmSync(file);
    expect(existsSync(`${file}-wal`)).toBe(true);
    await restore(copy, url);
    expect(people(file)).toEqual([]);
    await requireSound(file);
  });

  it('begins a notebook in an empty folder, and marks it', async () => {
    const copy = await backup((await notebook()).url);
    const folder = temporaryFolder();
    const url = `file:${folder}/fitwright.db`;
    expect(await restore(copy, url)).toEqual({
      file: join(folder, 'fitwright.db'),
      replaced: null,
    });
    rmSync(join(folder, 'fitwright.db'));
    await expect(migrate(url)).rejects.toThrow('is missing');
  });

  it("refuses a file whose parts contradict each other, by SQLite's own check", async () => {
    const { url, file } = await notebook();
    const copy = await backup(url);
    const db = new Database(copy);
    db.exec('CREATE TABLE t (a TEXT); CREATE INDEX i ON t (a)');
    db.exec(`INSERT INTO t VALUES ('written in table and index')`);
    db.close();
    const bytes = readFileSync(copy);
    bytes.write('W', bytes.indexOf('written in table and index'));
    writeFileSync(copy, bytes);
    await expect(restore(copy, url)).rejects.toThrow(/is damaged: .*index/);
    expect(people(file)).toEqual([]);
  });

  it('refuses a damaged file, another program’s, a newer notebook, itself and a missing one', async () => {
    const { url, file, folder } = await notebook();
    person(file, 'p1');
    const copy = await backup(url);
    const broken = join(folder, 'broken.db');
    const bytes = readFileSync(copy);
    bytes.fill(0xff, 4096 * 3, 4096 * 6);
    writeFileSync(broken, bytes);
    await expect(restore(broken, url)).rejects.toThrow(/damaged/);
    const other = join(folder, 'other.db');
    new Database(other).exec('CREATE TABLE t (a)');
    await expect(restore(other, url)).rejects.toThrow('not a notebook of Fitwright');
    const newer = new Database(copy);
    newer.exec(
      `INSERT INTO "_prisma_migrations" ("id", "checksum", "migration_name", "finished_at") VALUES ('x', 'y', 'z', 1)`,
    );
    newer.close();
    await expect(restore(copy, url)).rejects.toThrow('newer Fitwright');
    await expect(restore(file, url)).rejects.toThrow('the notebook itself');
    await expect(restore(join(folder, 'none.db'), url)).rejects.toThrow('There is no file');
    await expect(restore(copy, 'postgresql://shed/fit')).rejects.toThrow('pg_restore');
    expect(people(file)).toEqual(['p1']);
  });

  it('refuses while another process has the notebook, and not after that one was killed', async () => {
    const { url, file, folder } = await notebook();
    person(file, 'p1');
    const copy = await backup(url);
    const script = `const { lockNotebook } = await import('./lib/command/notebook-lock.mjs');
      await lockNotebook(process.argv[1], 'serving http://127.0.0.1:4180');
      console.log('locked'); setInterval(() => {}, 1000);`;
    const child = spawn(process.execPath, ['--input-type=module', '-e', script, folder], {
      cwd: root,
    });
    onTestFinished(() => void child.kill('SIGKILL'));
    await once(child.stdout, 'data');
    await expect(restore(copy, url)).rejects.toThrow(
      `already running on the notebook in ${folder} (process ${child.pid}, serving http://127.0.0.1:4180)`,
    );
    child.kill('SIGKILL');
    await once(child, 'close');
    await expect(restore(copy, url)).resolves.toMatchObject({ file });
  });

  it('gives its claim back, whether it succeeds or not', async () => {
    const { url, folder } = await notebook();
    const copy = await backup(url);
    await restore(copy, url);
    writeFileSync(join(folder, 'bad.db'), 'x'.repeat(5000));
    await expect(restore(join(folder, 'bad.db'), url)).rejects.toThrow();
    const release = await lockNotebook(folder, 'testing');
    release();
    expect(existsSync(join(folder, 'server.json'))).toBe(false);
  });
});
