import { fileURLToPath } from 'node:url';
import { resolve } from 'node:path';
import { PrismaLibSql } from '@prisma/adapter-libsql';
import type Libsql from 'libsql';
import { PrismaClient } from '@/generated/sqlite/client/client';
import type { Database, Value } from './database';
import { SqliteClient, SqlitePool } from './sqlite-pool';

type Statement = Libsql.Statement<unknown[]>;

/**
 * Opens the notebook in one SQLite file.
 *
 * Prisma and the plain statements share one pool, so that every connection is set alike (write-ahead log,
 * `synchronous=FULL`, foreign keys, busy timeout), and one order of writers. Plain statements have a
 * connection of their own with their statements kept ready: that is what makes one durable reading about
 * as quick as the driver itself.
 */
export async function openSqlite(url: string): Promise<Database> {
  const pool = new SqlitePool(fileOf(url));
  const client = new SqliteClient(pool);
  const connection = pool.acquireSync();
  const ready = new Map<string, Statement>();

  const run = (sql: string, values: readonly Value[]): unknown[][] => {
    let statement = ready.get(sql);
    if (statement === undefined) {
      statement = connection.prepare(sql.replaceAll(/\$(\d)/g, '?$1'));
      if (statement.reader) statement.raw(true);
      ready.set(sql, statement);
    }
    if (statement.reader) return statement.all([...values]) as unknown[][];
    statement.run([...values]);
    return [];
  };

  return {
    engine: 'sqlite',
    prisma: new PrismaClient({ adapter: new Adapter(client, url) }),
    read: async (sql, values = []) => run(sql, values),
    write: async (sql, values = []) => {
      const done = await pool.turns.take();
      try {
        return run(sql, values);
      } finally {
        done();
      }
    },
    settings: async () => pool.settings(),
    close: async () => {
      const done = await pool.turns.take();
      client.close();
      done();
    },
  };
}

/** Hands Prisma the client that is open already. */
class Adapter extends PrismaLibSql {
  constructor(
    private readonly client: SqliteClient,
    url: string,
  ) {
    super({ url });
  }

  override createClient() {
    // The adapter was built against another version of the same client.
    return this.client as unknown as ReturnType<PrismaLibSql['createClient']>;
  }
}

function fileOf(url: string): string {
  return url.startsWith('file:///')
    ? fileURLToPath(url)
    : resolve(decodeURIComponent(url.slice('file:'.length)));
}
