import { randomUUID } from 'node:crypto';
import { pendingMigrations } from './migrations.mjs';
import { Refusal } from './refusal.mjs';

/** As Prisma's CLI makes it. */
const table = `CREATE TABLE IF NOT EXISTS _prisma_migrations (
    id                      VARCHAR(36) PRIMARY KEY NOT NULL,
    checksum                VARCHAR(64) NOT NULL,
    finished_at             TIMESTAMPTZ,
    migration_name          VARCHAR(255) NOT NULL,
    logs                    TEXT,
    rolled_back_at          TIMESTAMPTZ,
    started_at              TIMESTAMPTZ NOT NULL DEFAULT now(),
    applied_steps_count     INTEGER NOT NULL DEFAULT 0
)`;

/** The number Prisma's CLI locks too, so that the two never change a notebook at once. */
const lock = 72707369;
const waitSeconds = 30;

/**
 * @param {import('./database-url.mjs').PostgresqlDatabase} database
 * @param {readonly import('./migrations.mjs').Migration[]} known
 * @returns {Promise<{ applied: string[], backup: null }>}
 * @throws {Refusal}
 */
export async function migratePostgresql(database, known) {
  const { default: pg } = await import('pg');
  const client = new pg.Client({
    connectionString: database.url,
    connectionTimeoutMillis: 10_000,
    application_name: 'fitwright migrate',
  });
  client.on('error', () => {}); // a connection lost in between also rejects the query that waits on it
  try {
    await client.connect();
    await refuseUnsafe(client, database);
    return { applied: await applyAll(client, database, known), backup: null };
  } catch (error) {
    throw inWords(error, database);
  } finally {
    await client.end().catch(() => {});
  }
}

/** A reading acknowledged is a reading on disk, or the notebook is not kept here. */
async function refuseUnsafe(client, { shown }) {
  const setting = async (name) => (await client.query(`SHOW ${name}`)).rows[0][name];
  if ((await setting('fsync')) === 'off') {
    throw new Refusal(
      `PostgreSQL at ${shown} runs with fsync = off, so a power cut could destroy the notebook. Nothing was changed. Set fsync = on in postgresql.conf and restart PostgreSQL.`,
    );
  }
  if ((await setting('synchronous_commit')) === 'off') {
    throw new Refusal(
      `PostgreSQL at ${shown} runs with synchronous_commit = off, so a power cut could lose readings already acknowledged. Nothing was changed. Set synchronous_commit = on.`,
    );
  }
  const encoding = await setting('server_encoding');
  if (encoding !== 'UTF8') {
    throw new Refusal(
      `The database at ${shown} stores text as ${encoding}, which cannot hold every sign a drawing uses. Nothing was changed. Make one with: createdb --encoding=UTF8 --template=template0 NAME`,
    );
  }
}

async function applyAll(client, database, known) {
  await client.query('BEGIN');
  try {
    await client.query(`SET LOCAL lock_timeout = '${waitSeconds}s'`);
    // Held until the transaction ends; of several programs starting at once, one works and the rest wait.
    await client.query(`SELECT pg_advisory_xact_lock(${lock})`);
    await refuseForeign(client, database);
    const pending = pendingMigrations(known, await appliedIn(client));
    if (pending.length > 0) await client.query(table);
    for (const migration of pending) await apply(client, migration);
    await client.query('COMMIT');
    return pending.map(({ name }) => name);
  } catch (error) {
    await client.query('ROLLBACK').catch(() => {});
    throw error;
  }
}

async function apply(client, { name, sql, checksum }) {
  try {
    await client.query(sql);
  } catch (error) {
    throw refuseFailed(name, error.message);
  }
  await client.query(
    `INSERT INTO _prisma_migrations
       (id, checksum, started_at, finished_at, migration_name, applied_steps_count)
     VALUES ($1, $2, statement_timestamp(), clock_timestamp(), $3, 1)`,
    [randomUUID(), checksum, name],
  );
}

async function appliedIn(client) {
  if (!(await hasLedger(client))) return [];
  return (await client.query('SELECT * FROM _prisma_migrations')).rows;
}

async function hasLedger(client) {
  const found = await client.query(`SELECT to_regclass('_prisma_migrations') IS NOT NULL AS found`);
  return found.rows[0].found;
}

async function refuseForeign(client, { shown }) {
  if (await hasLedger(client)) return;
  const tables = await client.query(
    `SELECT count(*)::int AS n FROM pg_tables WHERE schemaname = current_schema()`,
  );
  if (tables.rows[0].n === 0) return;
  throw new Refusal(
    `The database at ${shown} already holds tables of another program. It was not changed. Make an empty one for the notebook (createdb fitwright) and name it in DATABASE_URL.`,
  );
}

function refuseFailed(name, why) {
  return new Refusal(
    `The change "${name}" to the notebook's layout failed (${why}). The notebook is as it was before. Go back to the version that ran until now, and report this sentence.`,
  );
}

const silent =
  /^(ECONNREFUSED|ECONNRESET|ETIMEDOUT|EHOSTUNREACH|ENETUNREACH|ENOTFOUND|EAI_AGAIN|ENOENT|EACCES|57P0[123]|53300)$/;

function inWords(error, { shown, name, user }) {
  if (error instanceof Refusal) return error;
  const { code = '', message = '' } = error;
  if (silent.test(code) || /timeout|terminated unexpectedly/i.test(message)) {
    return new Refusal(
      `PostgreSQL is not answering at ${shown} (${code || message}). Nothing was changed. Start it, or correct DATABASE_URL.`,
    );
  }
  if (code === '3D000') {
    return new Refusal(
      `PostgreSQL at ${shown} has no database called ${name}. Make it with: createdb ${name}, or correct DATABASE_URL.`,
    );
  }
  if (code.startsWith('28') || /SASL|password/i.test(message)) {
    return new Refusal(
      `PostgreSQL at ${shown} does not let ${user || 'this account'} in. Check the name and the password in DATABASE_URL.`,
    );
  }
  if (code === '42501') {
    return new Refusal(
      `${user || 'This account'} may not make tables in the database at ${shown}. Nothing was changed. As its owner, run: GRANT CREATE ON SCHEMA public TO ${user || 'the account'}`,
    );
  }
  if (code === '55P03') {
    return new Refusal(
      `Another program has been changing the notebook at ${shown} for ${waitSeconds} seconds. Nothing was changed. Wait for it and start again.`,
    );
  }
  return new Refusal(`PostgreSQL at ${shown} refused: ${message}. Nothing was changed.`);
}
