import Libsql from 'libsql';
import pg from 'pg';
import type { NewReading } from '@/lib/schema/reading';
import { sqliteSettings } from '@/lib/store/sqlite-pool';

/** Puts readings into the book past the store: no judging, no looking up, one prepared INSERT. */
export type RawDriver = {
  /** One row, on the disk when it answers. */
  one(reading: NewReading, jobId: string): Promise<void>;
  /** Many rows in one transaction, one INSERT each. */
  many(readings: readonly NewReading[], jobId: string): Promise<void>;
  close(): Promise<void>;
};

/** The raw driver of a notebook, with the settings the store insists on; its triggers run as always. */
export async function rawReadings(databaseUrl: string): Promise<RawDriver> {
  return databaseUrl.startsWith('file:') ? sqlite(databaseUrl.slice(5)) : postgresql(databaseUrl);
}

const columns = [
  'id', 'jobId', 'pieceId', 'featureId', 'gaugeId', 'personId', 'station', 'direction', 'text', 'unit',
  'valuePm', 'resolutionPm', 'temperatureMilliC', 'heldAs', 'deviceTime', 'receivedAt', 'deviceId', 'deviceSeq',
] as const; // prettier-ignore

const deviceId = '019a0000-0000-7000-8000-000000000001';

function insert(placeholder: (i: number) => string): string {
  const names = columns.map((name) => `"${name}"`).join(', ');
  return `INSERT INTO "Reading" (${names}) VALUES (${columns.map((_, i) => placeholder(i + 1)).join(', ')})`;
}

function valuesOf(reading: NewReading, jobId: string) {
  const row = { ...reading, jobId, deviceId, receivedAt: new Date().toISOString() };
  return columns.map((name) => row[name]);
}

function sqlite(file: string): RawDriver {
  const db = new Libsql(file, { timeout: sqliteSettings.busy_timeout } as Libsql.Options);
  db.pragma('journal_mode = WAL');
  db.pragma('synchronous = FULL');
  db.pragma('foreign_keys = ON');
  const statement = db.prepare(insert(() => '?'));
  return {
    one: async (reading, jobId) => {
      statement.run(valuesOf(reading, jobId));
    },
    many: async (readings, jobId) => {
      db.exec('BEGIN IMMEDIATE');
      for (const reading of readings) statement.run(valuesOf(reading, jobId));
      db.exec('COMMIT');
    },
    close: async () => {
      db.close();
    },
  };
}

async function postgresql(url: string): Promise<RawDriver> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  const one = async (reading: NewReading, jobId: string) => {
    await client.query({
      name: 'keep',
      text: insert((i) => `$${i}`),
      values: valuesOf(reading, jobId),
    });
  };
  return {
    one,
    many: async (readings, jobId) => {
      await client.query('BEGIN');
      for (const reading of readings) await one(reading, jobId);
      await client.query('COMMIT');
    },
    close: () => client.end(),
  };
}
