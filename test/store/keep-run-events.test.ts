import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { NewRunEvent } from '@/lib/schema/new-run-event';
import { changesAfter } from '@/lib/store/changes-after';
import { changeThing } from '@/lib/store/change-thing';
import { closeStore } from '@/lib/store/client';
import { jobSheet } from '@/lib/store/job-sheet';
import { keepRunEvents } from '@/lib/store/keep-run-events';
import { uuidv7 } from '@/lib/store/uuid';
import { aJob, who } from './a-job';

let job: Awaited<ReturnType<typeof aJob>>;
let runId: string;
let deviceSeq = 700;
beforeAll(async () => {
  job = await aJob();
  runId = (await jobSheet(job.jobId))!.runs[0]!.id;
});
afterAll(closeStore);

const { deviceId } = who;
const keep = (...entries: unknown[]) => keepRunEvents({ deviceId, entries });
const events = async () => (await jobSheet(job.jobId))!.runEvents;

function anEvent(more: Partial<NewRunEvent> = {}): NewRunEvent {
  deviceSeq += 1;
  return {
    id: uuidv7(),
    deviceTime: '2026-11-25T09:30:00.000+01:00',
    deviceSeq,
    personId: null,
    runId,
    afterOrdinal: 2,
    kind: 'offset moved',
    note: 'by hand',
    offsetPm: -10_000_000,
    offsetDial: 'radius',
    ...more,
  };
}

describe('keepRunEvents', () => {
  it('keeps an event word for word, with its job and when it happened in universal time', async () => {
    const event = anEvent();
    const [outcome] = await keep(event);
    const kept = (await events()).find(({ id }) => id === event.id)!;
    expect(kept).toEqual({
      ...event,
      jobId: job.jobId,
      deviceId,
      at: '2026-11-25T08:30:00.000Z',
      version: 1,
      createdAt: expect.stringMatching(/Z$/),
      struckAt: null,
    });
    const [line] = (await changesAfter(0, 1000, job.jobId)).filter(
      ({ thingId }) => thingId === event.id,
    );
    expect(outcome).toEqual({
      id: event.id,
      state: 'kept',
      seq: line!.seq,
      receivedAt: kept.createdAt,
    });
    expect(line).toMatchObject({ thing: 'runEvent', act: 'made', deviceId, jobId: job.jobId });
  });

  it('keeps once what is sent twice, whatever was put right on it since', async () => {
    const event = anEvent();
    const [first] = await keep(event);
    expect(await keep(event, event)).toEqual([
      { ...first, state: 'known' },
      { ...first, state: 'known' },
    ]);
    await changeThing('runEvent', event.id, { version: 1, note: 'by eye' }, who);
    expect(await keep(event)).toEqual([{ ...first, state: 'known' }]);
    expect((await events()).filter(({ id }) => id === event.id)).toMatchObject([
      { note: 'by eye', version: 2 },
    ]);
  });

  it('judges each on its own: one slip does not hold back the rest', async () => {
    const good = anEvent();
    const outcomes = await keep(
      { ...anEvent(), afterOrdinal: -1 },
      good,
      { ...anEvent(), deviceSeq: good.deviceSeq },
      { ...anEvent(), runId: uuidv7() },
      { ...anEvent(), personId: uuidv7() },
      { ...good, offsetPm: 1 },
      anEvent({ note: 'a\u0000b' }),
      'nothing',
    );
    expect(outcomes.map((one) => ('code' in one ? `${one.code} ${one.at}` : one.state))).toEqual([
      'event/wrong-shape afterOrdinal',
      'kept',
      'event/device-seq-taken deviceSeq',
      'event/no-such-run runId',
      'event/no-such-person personId',
      'event/other-content id',
      'event/wrong-shape note',
      'event/wrong-shape ',
    ]);
  });
});
