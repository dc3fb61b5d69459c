import { setImmediate as oneTurn } from 'node:timers/promises';
import { afterAll, describe, expect, it } from 'vitest';
import { changeThing } from '@/lib/store/change-thing';
import { changesAfter } from '@/lib/store/changes-after';
import { closeStore, store } from '@/lib/store/client';
import { findThings } from '@/lib/store/find-things';
import { jobSheet } from '@/lib/store/job-sheet';
import { lastSeq } from '@/lib/store/last-seq';
import { makeThing } from '@/lib/store/make-thing';
import { keepCorrections, keepReadings } from '@/lib/store/readings';
import { startJob } from '@/lib/store/start-job';
import { uuidv7 } from '@/lib/store/uuid';
import { aJob, correctionOf, jobStart, newGauge, newJob, who } from './a-job';

afterAll(closeStore);

describe('the change log', () => {
  it('has a line for everything made, changed, struck and put back: who, when, before, after', async () => {
    const from = await lastSeq();
    const gauge = newGauge();
    const ruth = { deviceId: uuidv7(), personId: uuidv7() };
    await makeThing('gauge', gauge, who);
    await changeThing('gauge', gauge.id, { version: 1, name: 'Other' }, ruth);
    await changeThing('gauge', gauge.id, { version: 2, struck: true }, who);
    await changeThing('gauge', gauge.id, { version: 3, struck: false }, who);
    const { prisma } = await store();
    const lines = await prisma.changeLog.findMany({
      where: { seq: { gt: from } },
      orderBy: { seq: 'asc' },
    });
    expect(lines.map(({ act }) => act)).toEqual(['made', 'changed', 'struck', 'put back']);
    expect(lines[1]).toMatchObject({ ...ruth, thing: 'gauge', thingId: gauge.id, jobId: null });
    const read = (text: string | null) => (text === null ? null : (JSON.parse(text) as object));
    expect(read(lines[0]!.before)).toBeNull();
    expect(read(lines[1]!.before)).toMatchObject({ ...gauge, version: 1 });
    expect(read(lines[1]!.after)).toMatchObject({ ...gauge, name: 'Other', version: 2 });
    expect(lines.slice(1).map(({ before }) => read(before))).toEqual(
      lines.slice(0, -1).map(({ after }) => read(after)),
    );
  });

  it('has a line for every row a job is started with', async () => {
    const start = jobStart(2);
    await startJob(start, who);
    const changes = await changesAfter(0, 1000, start.job.id);
    const things = changes
      .filter(({ jobId }) => jobId !== null)
      .map(({ thing, act }) => `${thing} ${act}`);
    expect(things).toEqual([
      'job made',
      ...Array(2).fill('part made'),
      ...Array(4).fill('piece made'),
      ...Array(2).fill('feature made'),
      'fit made',
      'run made',
    ]);
  });

  it('has a line for every reading and correction, with the row as it is in the book', async () => {
    const job = await aJob();
    const from = await lastSeq();
    const reading = job.reading();
    const correction = correctionOf(reading.id);
    await keepReadings({ deviceId: who.deviceId, entries: [reading] });
    await keepCorrections({ deviceId: who.deviceId, entries: [correction] });
    const sheet = (await jobSheet(job.jobId))!;
    expect(await changesAfter(from, 10)).toEqual([
      {
        seq: expect.any(Number),
        at: sheet.readings[0]!.receivedAt,
        personId: null,
        deviceId: who.deviceId,
        jobId: job.jobId,
        thing: 'reading',
        thingId: reading.id,
        act: 'kept',
        after: sheet.readings[0],
      },
      expect.objectContaining({ thing: 'correction', act: 'kept', after: sheet.corrections[0] }),
    ]);
  });

  it('has no line for what was refused, stale or known', async () => {
    const gauge = newGauge();
    await makeThing('gauge', gauge, who);
    const from = await lastSeq();
    await makeThing('gauge', gauge, who);
    await makeThing('gauge', { ...gauge, name: 'another' }, who);
    await changeThing('gauge', gauge.id, { version: 7, name: 'stale' }, who);
    await changeThing('gauge', gauge.id, { version: 1, rangeLowPm: 1, rangeHighPm: 0 }, who);
    expect(await changesAfter(from, 10)).toEqual([]);
  });

  it('shows of one job its own lines and those of no job', async () => {
    const [one, other] = [newJob(), newJob()];
    const from = await lastSeq();
    await makeThing('job', one, who);
    await makeThing('job', other, who);
    const person = { id: uuidv7(), name: 'Ruth' };
    await makeThing('person', person, who);
    const seen = (await changesAfter(from, 10, one.id)).map(({ thingId }) => thingId);
    expect(seen).toEqual([one.id, person.id]);
  });

  it('gives at most as many lines as are asked for, oldest first', async () => {
    const from = await lastSeq();
    for (let i = 0; i < 5; i += 1) await makeThing('person', { id: uuidv7(), name: `P${i}` }, who);
    const seen: string[] = [];
    let after = from;
    for (;;) {
      const changes = await changesAfter(after, 2);
      expect(changes.length).toBeLessThanOrEqual(2);
      if (changes.length === 0) break;
      seen.push(...changes.map((change) => String(change.after['name'])));
      after = changes.at(-1)!.seq;
    }
    expect(seen).toEqual(['P0', 'P1', 'P2', 'P3', 'P4']);
  });

  it('misses nothing and doubles nothing when read while many write at once', async () => {
    const jobs = [await aJob(), await aJob()];
    const from = await lastSeq();
    let writing = true;
    const seen: number[] = [];
    const names: string[] = [];
    const reader = (async () => {
      let after = from;
      while (writing || (await changesAfter(after, 1)).length > 0) {
        const changes = await changesAfter(after, 7);
        seen.push(...changes.map(({ seq }) => seq));
        names.push(...changes.map(({ thingId }) => thingId));
        after = changes.at(-1)?.seq ?? after;
        await oneTurn();
      }
    })();
    const gauge = newGauge();
    await makeThing('gauge', gauge, who);
    const written = await Promise.all(
      Array.from({ length: 24 }, async (_, i) => {
        if (i % 3 === 0) {
          const person = { id: uuidv7(), name: `N${i}` };
          await makeThing('person', person, who);
          return [person.id];
        }
        const entries = Array.from({ length: 5 }, () => jobs[i % 2]!.reading());
        await keepReadings({ deviceId: who.deviceId, entries });
        return entries.map(({ id }) => id);
      }),
    );
    writing = false;
    await reader;
    expect(names.toSorted()).toEqual([gauge.id, ...written.flat()].toSorted());
    expect(seen).toEqual(seen.toSorted((a, b) => a - b));
    expect(new Set(seen).size).toBe(seen.length);
    expect(await findThings('gauge', { id: gauge.id })).toHaveLength(1);
  });
});
