import { ConnectionPool, Sqlite3Client, Sqlite3Transaction } from '@libsql/client/sqlite3';
import type Libsql from 'libsql';
import { Turns } from './turns';

type Connection = Libsql.Database;

/** How long a connection waits for a writer of another process. */
const busyMs = 5000;

/** What every connection must say of itself before anything is kept through it. */
export const sqliteSettings = {
  journal_mode: 'wal',
  synchronous: 2,
  foreign_keys: 1,
  // Without it INSERT OR REPLACE would take a row away past the triggers that forbid it.
  recursive_triggers: 1,
  busy_timeout: busyMs,
} as const;

/** Opens connections as they are needed, and hands none out that is not set as it must be. */
export class SqlitePool extends ConnectionPool {
  readonly turns = new Turns();
  #opened: Connection[] = [];

  constructor(file: string, connectionsMax = 8) {
    // The driver's types leave out `timeout`; a PRAGMA instead would be forgotten after a transaction.
    super(file, { timeout: busyMs } as Libsql.Options, connectionsMax);
  }

  override acquireSync(forTransaction = false): Connection {
    const connection = super.acquireSync(forTransaction);
    if (this.#opened.includes(connection)) return connection;
    try {
      makeDurable(connection);
    } catch (error) {
      connection.close();
      this.release(connection);
      throw error;
    }
    this.#opened = [...this.#opened.filter(({ open }) => open), connection];
    return connection;
  }

  settings(): Record<string, unknown>[] {
    return this.#opened.filter(({ open }) => open).map(settingsOf);
  }
}

/** The client Prisma works through: its transactions write from the first moment and take turns. */
export class SqliteClient extends Sqlite3Client {
  constructor(private readonly pool: SqlitePool) {
    super(pool, 'number');
  }

  /** `BEGIN IMMEDIATE`: one that began by looking could find the notebook changed when it comes to write. */
  override async transaction(): Promise<Sqlite3Transaction> {
    const done = await this.pool.turns.take();
    try {
      const connection = await this.pool.acquire(true);
      const end = (used: Connection) => {
        this.pool.release(used);
        done();
      };
      try {
        connection.exec('BEGIN IMMEDIATE');
      } catch (error) {
        this.pool.release(connection);
        throw error;
      }
      return new Sqlite3Transaction(connection, 'number', end);
    } catch (error) {
      done();
      throw error;
    }
  }
}

function makeDurable(connection: Connection): void {
  connection.pragma('journal_mode = WAL');
  connection.pragma('synchronous = FULL');
  connection.pragma('foreign_keys = ON');
  connection.pragma('recursive_triggers = ON');
  const found = settingsOf(connection);
  for (const [name, wanted] of Object.entries(sqliteSettings)) {
    if (found[name] !== wanted) {
      throw new Error(`the notebook requires ${name} = ${wanted}, got ${String(found[name])}`);
    }
  }
}

function settingsOf(connection: Connection): Record<string, unknown> {
  const value = (name: string) => {
    const row = connection.prepare(`PRAGMA ${name}`).get() as Record<string, unknown>;
    return row[name] ?? row['timeout'];
  };
  return Object.fromEntries(Object.keys(sqliteSettings).map((name) => [name, value(name)]));
}
