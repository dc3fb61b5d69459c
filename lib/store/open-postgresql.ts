import { createHash } from 'node:crypto';
import { PrismaPg } from '@prisma/adapter-pg';
import { Pool, type ClientBase, type CustomTypesConfig, type PoolConfig } from 'pg';
import { PrismaClient } from '@/generated/postgresql/client/client';
import type { Database, StoreClient, Value } from './database';

const connectionsMax = 10;
const waitMs = 10_000;

/** Opens the notebook in a PostgreSQL database; several processes may share it. */
export async function openPostgresql(url: string): Promise<Database> {
  const opened = new Set<ClientBase>();
  const pool = new Pool({
    connectionString: url,
    max: connectionsMax,
    connectionTimeoutMillis: waitMs,
    onConnect: async (client: ClientBase) => {
      await makeDurable(client);
      opened.add(client);
    },
  } as PoolConfig);
  pool.on('remove', (client) => opened.delete(client));
  // A connection that breaks while nobody uses it is replaced; whoever uses one is told by the answer.
  pool.on('error', () => {});

  const run = async (sql: string, values: readonly Value[] = []) => {
    const { rows } = await pool.query({
      name: nameOf(sql),
      text: sql,
      values: [...values],
      rowMode: 'array',
      types: plainTypes,
    });
    return rows as unknown[][];
  };

  const prisma = new PrismaClient({ adapter: new PrismaPg(pool, { disposeExternalPool: true }) });
  return {
    engine: 'postgresql',
    // The two generated clients differ only in the names of isolation levels.
    prisma: prisma as unknown as StoreClient,
    read: run,
    write: run,
    settings: () => Promise.all([...opened].map(settingsOf)),
    close: async () => {
      await prisma.$disconnect();
      if (!pool.ended) await pool.end();
    },
  };
}

/** Whatever a role or a database has been set to, a commit waits for the disk. */
async function makeDurable(client: ClientBase): Promise<void> {
  await client.query(`SET lock_timeout = '${waitMs}ms'`);
  const { fsync, synchronous_commit } = await settingsOf(client);
  if (fsync !== 'on') throw new Error(`the notebook requires fsync = on, got ${String(fsync)}`);
  if (synchronous_commit === 'off') await client.query('SET synchronous_commit = on');
}

async function settingsOf(client: ClientBase): Promise<Record<string, unknown>> {
  const { rows } = await client.query<Record<string, unknown>>(
    `SELECT current_setting('fsync') AS fsync,
            current_setting('synchronous_commit') AS synchronous_commit`,
  );
  return rows[0]!;
}

/** The driver gives 64-bit integers as text and parses JSON; here they are numbers and text, as on SQLite. */
const plainTypes: CustomTypesConfig = {
  getTypeParser: (oid: number) =>
    oid === 20 || oid === 23 ? (value: string) => Number(value) : (value: string) => value,
} as CustomTypesConfig;

const names = new Map<string, string>();

/** A statement with a name is planned once on each connection. */
function nameOf(sql: string): string {
  const known = names.get(sql);
  if (known !== undefined) return known;
  const name = `fitwright_${createHash('sha256').update(sql).digest('hex').slice(0, 24)}`;
  names.set(sql, name);
  return name;
}
