/*
 * How fast readings come into the book and a board out of it, on both databases: medians over several
 * rounds, each beside the limit it is held against, measured in the same rounds.
 *
 *     npm run measure:store
 *
 * It starts a PostgreSQL and two servers of its own, and needs a few minutes and a machine left alone. What
 * is slower than aimed at is printed so; nothing is judged here.
 */
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import pg from 'pg';
import { buildIfBehind } from '@/lib/command/build.mjs';
import { migrate } from '@/lib/command/migrate.mjs';
import { root } from '@/lib/command/root.mjs';
import type { NewReading } from '@/lib/schema/reading';
import { closeStore } from '@/lib/store/client';
import { jobSheet } from '@/lib/store/job-sheet';
import { jobsRegister } from '@/lib/store/jobs-register';
import { keepReadings } from '@/lib/store/readings';
import { uuidv7 } from '@/lib/store/uuid';
import { startPostgres } from '../setup/start-postgres.mjs';
import { startServer } from '../setup/start-server.mjs';
import { aJob } from '../store/a-job';
import { apiLoad } from './api-load';
import { fillNotebook } from './fill-notebook';
import { median, timeSideBySide } from './median';
import { rawReadings } from './raw-readings';
import { printTable, type Row } from './table';

const rounds = 9;
const boardReadings = 400;
const totals = [1_000, 100_000, 1_000_000];

const rows: Row[] = [];
mkdirSync(join(root, 'test/.out'), { recursive: true });
const folder = mkdtempSync(join(root, 'test/.out/measure-'));
const postgres = await startPostgres();
try {
  buildIfBehind();
  for (const engine of ['SQLite', 'PostgreSQL']) {
    const fresh = engine === 'SQLite' ? freshSqlite : freshPostgresql;
    await measureStore(engine, await fresh());
    await measureApi(engine, await fresh());
    await measureBoard(engine, await fresh());
  }
  printTable(rows);
} finally {
  await closeStore();
  postgres.stop();
  rmSync(folder, { recursive: true });
}

/** A single reading and a batch of a hundred, beside the raw driver with the same settings. */
async function measureStore(engine: string, url: string): Promise<void> {
  const job = await open(url);
  const raw = await rawReadings(url);
  const deviceId = uuidv7();
  const one = { times: 200, make: () => job.reading() };
  const hundred = { times: 30, make: () => Array.from({ length: 100 }, () => job.reading()) };
  const keep = (...entries: NewReading[]) => keepReadings({ deviceId, entries });
  const ms = await timeSideBySide(rounds, {
    rawOne: { ...one, run: (reading: NewReading) => raw.one(reading, job.jobId) },
    storeOne: { ...one, run: (reading: NewReading) => keep(reading) },
    rawHundred: { ...hundred, run: (readings: NewReading[]) => raw.many(readings, job.jobId) },
    storeHundred: { ...hundred, run: (readings: NewReading[]) => keep(...readings) },
  });
  await raw.close();
  compare(
    `${engine}: one reading, store`,
    ms.storeOne,
    'raw driver, one row',
    ms.rawOne,
    'speed',
    0.3,
  );
  compare(
    `${engine}: batch of 100, store`,
    ms.storeHundred,
    'one reading, store',
    ms.storeOne,
    'time',
    3,
  );
  const beside = 'raw driver, 100 in one transaction';
  compare(`${engine}: batch of 100, store`, ms.storeHundred, beside, ms.rawHundred, 'speed', 0.3);
}

/** The same through the API, beside an address of the same server that touches nothing. */
async function measureApi(engine: string, url: string): Promise<void> {
  const job = await open(url);
  await closeStore();
  const server = await startServer({ databaseUrl: url });
  const api = `${server.url}/api/v1`;
  const deviceId = uuidv7();
  const batch = (count: number) => () => ({
    deviceId,
    entries: Array.from({ length: count }, () => job.reading()),
  });
  for (const clients of [1, 8]) {
    const taken = { hello: [] as number[], one: [] as number[], hundred: [] as number[] };
    for (let round = -1; round < rounds; round += 1) {
      const hello = await apiLoad(`${api}/hello`, clients, 300);
      const one = await apiLoad(`${api}/readings`, clients, 300, batch(1));
      const hundred = await apiLoad(`${api}/readings`, clients, 50, batch(100));
      if (round < 0) continue; // the round before the first warms up
      taken.hello.push(hello);
      taken.one.push(one);
      taken.hundred.push(hundred);
    }
    const [hello, one, hundred] = [median(taken.hello), median(taken.one), median(taken.hundred)];
    const from = `API, ${clients} client${clients === 1 ? '' : 's'}`;
    compare(`${engine}: one reading, ${from}`, one, 'trivial address', hello, 'speed', 0.5);
    compare(`${engine}: batch of 100, ${from}`, hundred, `one reading, ${from}`, one, 'time', 3);
  }
  await server.remove();
}

/** Opening a board of the same size with ever more readings in the rest of the notebook. */
async function measureBoard(engine: string, url: string): Promise<void> {
  const job = await open(url);
  for (let i = 0; i < boardReadings; i += 100) {
    const entries = Array.from({ length: 100 }, () => job.reading());
    await keepReadings({ deviceId: uuidv7(), entries });
  }
  let first: number | undefined;
  for (const total of totals) {
    await fillNotebook(total, job.gaugeId);
    const { board } = await timeSideBySide(rounds, {
      board: { times: 30, make: () => job.jobId, run: jobSheet },
    });
    first ??= board;
    const name = `${engine}: board of a job, 10^${Math.log10(total)} readings in all`;
    compare(name, board, 'with 10^3', first, 'time', 1.5);
  }
  const { register } = await timeSideBySide(rounds, {
    register: { times: 5, make: () => null, run: jobsRegister },
  });
  const what = `${engine}: list of 100 to 150 jobs, 10^6 readings in all`;
  rows.push({ what, own: `${register.toFixed(1)} ms`, against: '', aim: '' });
}

async function open(url: string) {
  await closeStore();
  process.env['DATABASE_URL'] = url;
  await migrate(url);
  return aJob();
}

async function freshSqlite(): Promise<string> {
  return `file:${join(mkdtempSync(join(folder, 'notebook-')), 'fitwright.db')}`;
}

async function freshPostgresql(): Promise<string> {
  const admin = new pg.Client({ connectionString: postgres.url });
  await admin.connect();
  const name = `fitwright_measure_${Date.now()}`;
  await admin.query(`CREATE DATABASE ${name}`);
  await admin.end();
  const url = new URL(postgres.url);
  url.pathname = `/${name}`;
  return url.href;
}

/** `speed`: at least so many times as fast as the other; `time`: at most so many times as long. */
function compare(
  name: string,
  ms: number,
  beside: string,
  besideMs: number,
  by: 'speed' | 'time',
  aim: number,
): void {
  const ratio = by === 'speed' ? besideMs / ms : ms / besideMs;
  const reached = by === 'speed' ? ratio >= aim : ratio <= aim;
  const as = by === 'speed' ? 'as fast' : 'as long';
  rows.push({
    what: name,
    own: `${ms.toFixed(2)} ms`,
    against: `${beside} ${besideMs.toFixed(2)} ms`,
    aim: `${ratio.toFixed(2)} ${as}, aim ${aim}${reached ? '' : ', missed'}`,
  });
}
