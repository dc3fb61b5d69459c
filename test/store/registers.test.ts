import { afterAll, describe, expect, it } from 'vitest';
import { changeThing } from '@/lib/store/change-thing';
import { changesAfter } from '@/lib/store/changes-after';
import { closeStore } from '@/lib/store/client';
import { findThings } from '@/lib/store/find-things';
import { gaugeUsage } from '@/lib/store/gauge-usage';
import { health } from '@/lib/store/health';
import { jobSheet } from '@/lib/store/job-sheet';
import { jobsRegister } from '@/lib/store/jobs-register';
import { makeThing } from '@/lib/store/make-thing';
import { keepReadings } from '@/lib/store/readings';
import { settingsFor } from '@/lib/store/settings';
import { uuidv7 } from '@/lib/store/uuid';
import { aJob, newGauge, newJob, who } from './a-job';

afterAll(closeStore);

describe('jobsRegister', () => {
  it('counts what each job has, newest job first', async () => {
    const older = await aJob();
    const newer = newJob();
    await makeThing('job', newer, who);
    await keepReadings({
      deviceId: who.deviceId,
      entries: [
        older.reading(),
        older.reading(),
        older.reading({ pieceId: older.plungers[0]!.id, featureId: older.outside.id }),
      ],
    });
    await makeThing(
      'pair',
      {
        id: uuidv7(),
        jobId: older.jobId,
        fitId: older.fit.id,
        internalPieceId: older.liners[0]!.id,
        externalPieceId: older.plungers[0]!.id,
        state: 'final',
        mark: 'A',
        clearancePm: null,
        uncertaintyPm: null,
        decidedAt: null,
        personId: null,
      },
      who,
    );
    await changeThing('piece', older.liners[2]!.id, { version: 1, struck: true }, who);
    const [first, second] = await jobsRegister();
    expect(first).toMatchObject({ job: { id: newer.id }, parts: 0, pieces: 0, piecesMeasured: 0 });
    const sheet = (await jobSheet(older.jobId))!;
    expect(second).toEqual({
      job: sheet.job,
      parts: 2,
      pieces: 4,
      piecesMeasured: 2,
      features: 2,
      fits: 1,
      pairsFinal: 1,
      lastAt: sheet.pieces.find(({ struckAt }) => struckAt !== null)!.struckAt,
    });
  });
});

describe('gaugeUsage', () => {
  it('tells of every gauge how often it was read and when last', async () => {
    const job = await aJob();
    const unused = newGauge();
    await makeThing('gauge', unused, who);
    await keepReadings({ deviceId: who.deviceId, entries: [job.reading()] });
    await keepReadings({ deviceId: who.deviceId, entries: [job.reading(), job.reading()] });
    const usage = await gaugeUsage();
    const last = (await jobSheet(job.jobId))!.readings.at(-1)!;
    expect(usage).toContainEqual({ gaugeId: job.gaugeId, readings: 3, lastAt: last.receivedAt });
    expect(usage).toContainEqual({ gaugeId: unused.id, readings: 0, lastAt: null });
  });
});

describe('jobSheet', () => {
  it('has nothing of other jobs, and is null where there is no such job', async () => {
    const [one, other] = [await aJob(), await aJob()];
    await keepReadings({ deviceId: who.deviceId, entries: [one.reading(), other.reading()] });
    const sheet = (await jobSheet(one.jobId))!;
    const { seq, job, gauges, people, materials, fitRules, ...lists } = sheet;
    expect([materials, fitRules]).toEqual([[], []]);
    expect([seq > 0, job.id, gauges.length > 1, people]).toEqual([true, one.jobId, true, []]);
    for (const rows of Object.values(lists)) {
      expect(rows.filter(({ jobId }) => jobId !== one.jobId)).toEqual([]);
    }
    expect(lists.readings).toHaveLength(1);
    expect(await jobSheet(uuidv7())).toBeNull();
    expect(await jobSheet("' OR true --")).toBeNull();
  });

  it('is of one moment, however much is being kept meanwhile', async () => {
    const job = await aJob();
    let keeping = true;
    const writer = (async () => {
      for (let i = 0; i < 40; i += 1) {
        await keepReadings({ deviceId: who.deviceId, entries: [job.reading(), job.reading()] });
        await new Promise(setImmediate);
      }
      keeping = false;
    })();
    const seen: { seq: number; readings: number }[] = [];
    while (keeping) {
      const { seq, readings } = (await jobSheet(job.jobId))!;
      seen.push({ seq, readings: readings.length });
      await new Promise(setImmediate);
    }
    await writer;
    const lines = await changesAfter(0, 1000, job.jobId);
    const keptBy = (seq: number) =>
      lines.filter((line) => line.thing === 'reading' && line.seq <= seq).length;
    expect(seen.length).toBeGreaterThan(5);
    for (const { seq, readings } of seen) expect(readings).toBe(keptBy(seq));
  });
});

describe('settingsFor', () => {
  it('gives what the shop and what one device have chosen', async () => {
    const none = { decimal: null, unitShown: null, theme: null, hand: null, personId: null };
    expect(await settingsFor(null)).toEqual({ shop: null, device: null });
    const deviceId = uuidv7();
    await makeThing('setting', { ...none, id: 'shop', decimal: ',' }, who);
    await makeThing('setting', { ...none, id: deviceId, theme: 'glare' }, who);
    expect(await settingsFor(deviceId)).toMatchObject({
      shop: { id: 'shop', decimal: ',', theme: null },
      device: { id: deviceId, theme: 'glare' },
    });
    expect(await settingsFor(null)).toMatchObject({ device: null });
  });
});

describe('findThings', () => {
  it('orders text by its bytes, in whatever language the database was made', async () => {
    const none = { decimal: null, unitShown: null, theme: null, hand: null, personId: null };
    const ids = ['a0000000-0000-7000-8000-000000000000', 'B0000000-0000-7000-8000-000000000000'];
    for (const id of ids) await makeThing('setting', { ...none, id }, who);
    const found = (await findThings('setting')).map(({ id }) => id);
    expect(found.filter((id) => ids.includes(id))).toEqual(ids.toReversed());
  });
});

describe('health', () => {
  it('touches the database', async () => {
    const found = await health();
    expect(found.database).toBe(process.env['TEST_DATABASE'] ?? 'sqlite');
    expect(found.seq).toBeGreaterThan(0);
  });
});
