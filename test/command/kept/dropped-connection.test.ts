import { Client } from 'pg';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { migrate } from '@/lib/command/migrate.mjs';
import { closeStore } from '@/lib/store/client';
import { keepReadings } from '@/lib/store/readings';
import { uuidv7 } from '@/lib/store/uuid';
import { startPostgres } from '../../setup/start-postgres.mjs';
import { aJob } from '../../store/a-job';

// A server of its own, whatever TEST_DATABASE says: its connections are cut.
let server: { url: string; stop: () => void };
const earlier = process.env['DATABASE_URL'];
beforeAll(async () => {
  server = await startPostgres({ log_min_messages: 'fatal' });
  await closeStore();
  process.env['DATABASE_URL'] = server.url;
  await migrate(server.url);
});
afterAll(async () => {
  await closeStore();
  process.env['DATABASE_URL'] = earlier;
  server.stop();
});

/** Ends every connection but the one that asks, as a restart of the database does. */
async function cutAll(): Promise<number> {
  const client = new Client({ connectionString: server.url });
  await client.connect();
  const { rowCount } = await client.query(
    `SELECT pg_terminate_backend(pid) FROM pg_stat_activity
     WHERE pid <> pg_backend_pid() AND backend_type = 'client backend'`,
  );
  await client.end();
  return rowCount ?? 0;
}

it('a dropped database connection fails at most what was under way, and sending again keeps it once', async () => {
  const job = await aJob();
  const deviceId = uuidv7();
  const entries = Array.from({ length: 40 }, () => job.reading());
  await keepReadings({ deviceId, entries: entries.slice(0, 1) });
  expect(await cutAll()).toBeGreaterThan(0);

  // As the outbox does: what fails is sent again, as it is, until an answer names it.
  for (const [i, entry] of entries.entries()) {
    if (i % 10 === 5) await cutAll();
    let state: string | undefined;
    for (let attempt = 0; attempt < 10 && state === undefined; attempt += 1) {
      const outcomes = await keepReadings({ deviceId, entries: [entry] }).catch(() => undefined);
      state = outcomes?.[0]?.state;
    }
    expect(['kept', 'known']).toContain(state);
  }
  const client = new Client({ connectionString: server.url });
  await client.connect();
  const { rows } = await client.query<{ id: string }>('SELECT "id" FROM "Reading" ORDER BY "seq"');
  await client.end();
  expect(rows.map(({ id }) => id)).toEqual(entries.map(({ id }) => id));
});
