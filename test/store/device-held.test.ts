import { afterAll, expect, it } from 'vitest';
import { closeStore } from '@/lib/store/client';
import { deviceHeld } from '@/lib/store/device-held';
import { jobSheet } from '@/lib/store/job-sheet';
import { keepCuts } from '@/lib/store/keep-cuts';
import { keepRunEvents } from '@/lib/store/keep-run-events';
import { keepStrikes } from '@/lib/store/keep-strikes';
import { keepCorrections, keepReadings } from '@/lib/store/readings';
import { uuidv7 } from '@/lib/store/uuid';
import { aJob, correctionOf } from './a-job';

afterAll(closeStore);

it('names the highest number of a device and the numbers below it that the book lacks', async () => {
  const job = await aJob();
  const deviceId = uuidv7();
  const entries = [2, 3, 7].map((deviceSeq) => ({ ...job.reading(), deviceSeq }));
  await keepReadings({ deviceId, entries });
  expect(await deviceHeld(deviceId)).toEqual({
    deviceId,
    highest: 7,
    gaps: [
      { from: 4, to: 6 },
      { from: 1, to: 1 },
    ],
  });
  // A correction takes its number from the same row.
  const correction = { ...correctionOf(entries[0]!.id), deviceSeq: 5 };
  await keepCorrections({ deviceId, entries: [correction] });
  expect((await deviceHeld(deviceId)).gaps).toEqual([
    { from: 6, to: 6 },
    { from: 4, to: 4 },
    { from: 1, to: 1 },
  ]);
  // So does a cut.
  const { pieceId, featureId } = entries[0]!;
  const cut = {
    id: uuidv7(),
    deviceTime: '2026-11-25T09:30:00.000+01:00',
    deviceSeq: 4,
    personId: null,
    pieceId,
    featureId,
    lastReadingId: null,
    spring: true,
    askedPm: 0,
    beforePm: 18_000_000_000,
    tool: '',
  };
  expect(await keepCuts({ deviceId, entries: [cut] })).toMatchObject([{ state: 'kept' }]);
  expect((await deviceHeld(deviceId)).gaps).toEqual([
    { from: 6, to: 6 },
    { from: 1, to: 1 },
  ]);
  // And an event of a run.
  const { runs } = (await jobSheet(job.jobId))!;
  const event = {
    id: uuidv7(),
    deviceTime: '2026-11-25T09:31:00.000+01:00',
    deviceSeq: 6,
    personId: null,
    runId: runs[0]!.id,
    afterOrdinal: 1,
    kind: 'break',
    note: '',
    offsetPm: null,
    offsetDial: null,
  };
  expect(await keepRunEvents({ deviceId, entries: [event] })).toMatchObject([{ state: 'kept' }]);
  expect((await deviceHeld(deviceId)).gaps).toEqual([{ from: 1, to: 1 }]);
  // And the striking out of one.
  const { deviceTime, personId } = event;
  const struck = { thing: 'runEvent', thingId: event.id, struck: true };
  const strike = { id: uuidv7(), deviceTime, deviceSeq: 1, personId, ...struck };
  expect(await keepStrikes({ deviceId, entries: [strike] })).toMatchObject([{ state: 'kept' }]);
  expect((await deviceHeld(deviceId)).gaps).toEqual([]);
});

it('has nothing of a device it does not know', async () => {
  const deviceId = uuidv7();
  expect(await deviceHeld(deviceId)).toEqual({ deviceId, highest: 0, gaps: [] });
});
