import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { closeStore, store } from '@/lib/store/client';
import { jobSheet } from '@/lib/store/job-sheet';
import { lastSeq } from '@/lib/store/last-seq';
import { keepRunEvents } from '@/lib/store/keep-run-events';
import { keepStrikes } from '@/lib/store/keep-strikes';
import { keepCorrections, keepReadings } from '@/lib/store/readings';
import { uuidv7 } from '@/lib/store/uuid';
import { aJob, correctionOf, who } from './a-job';

let job: Awaited<ReturnType<typeof aJob>>;
beforeAll(async () => {
  job = await aJob();
  const reading = job.reading();
  await keepReadings({ deviceId: who.deviceId, entries: [reading] });
  await keepCorrections({ deviceId: who.deviceId, entries: [correctionOf(reading.id)] });
  const { deviceId } = who;
  const { deviceTime, personId } = reading;
  const runId = (await jobSheet(job.jobId))!.runs[0]!.id;
  const said = { kind: 'coolant', note: '', offsetPm: null, offsetDial: null };
  const event = { id: uuidv7(), deviceTime, deviceSeq: 900, personId, runId, afterOrdinal: 1 };
  await keepRunEvents({ deviceId, entries: [{ ...event, ...said }] });
  const strike = { thing: 'runEvent', thingId: event.id, struck: true };
  const entry = { id: uuidv7(), deviceTime, deviceSeq: 901, personId, ...strike };
  const [kept] = await keepStrikes({ deviceId, entries: [entry] });
  expect(kept).toMatchObject({ state: 'kept' });
});
afterAll(closeStore);

const statements = (table: string) => [
  `UPDATE "${table}" SET "deviceId" = 'x'`,
  `UPDATE "${table}" SET "deviceId" = "deviceId" WHERE "seq" = (SELECT max("seq") FROM "${table}")`,
  `DELETE FROM "${table}"`,
  `TRUNCATE "${table}"`,
  `TRUNCATE "${table}" CASCADE`,
];
const tables = ['Reading', 'Correction', 'Strike', 'ChangeLog'];

describe('the database itself', () => {
  it.each(tables.flatMap(statements))('refuses %s', async (statement) => {
    const { engine, write } = await store();
    const before = [await jobSheet(job.jobId), await lastSeq()];
    const isSyntax = engine === 'sqlite' && statement.startsWith('TRUNCATE');
    await expect(write(statement)).rejects.toThrow(isSyntax ? 'syntax error' : 'append-only');
    expect([await jobSheet(job.jobId), await lastSeq()]).toEqual(before);
  });

  it.each(tables)('refuses to put a row of %s in the place of another', async (table) => {
    const { engine, write } = await store();
    const copy = `SELECT * FROM "${table}" LIMIT 1`;
    const replace =
      engine === 'sqlite'
        ? `INSERT OR REPLACE INTO "${table}" ${copy}`
        : `INSERT INTO "${table}" ${copy} ON CONFLICT ("seq") DO UPDATE SET "deviceId" = 'x'`;
    const before = [await jobSheet(job.jobId), await lastSeq()];
    // The change log gives each new line a number of its own on PostgreSQL: nothing is replaced there.
    if (engine === 'sqlite' || table !== 'ChangeLog') {
      await expect(write(replace)).rejects.toThrow('append-only');
      expect([await jobSheet(job.jobId), await lastSeq()]).toEqual(before);
    }
  });
});
