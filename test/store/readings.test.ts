import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { closeStore } from '@/lib/store/client';
import { jobSheet } from '@/lib/store/job-sheet';
import { makeThing } from '@/lib/store/make-thing';
import { keepCorrections, keepReadings } from '@/lib/store/readings';
import { uuidv7 } from '@/lib/store/uuid';
import { aJob, correctionOf, who } from './a-job';

type Job = Awaited<ReturnType<typeof aJob>>;
let job: Job;
beforeAll(async () => {
  job = await aJob();
});
afterAll(closeStore);

const { deviceId } = who;
const keep = (...entries: unknown[]) => keepReadings({ deviceId, entries });
const correct = (...entries: unknown[]) => keepCorrections({ deviceId, entries });
const stateOf = ({ state }: { state: string }) => state;

describe('keepReadings', () => {
  it('keeps a reading word for word, with what the server adds', async () => {
    const reading = job.reading({
      text: ' 18,003 ',
      valuePm: -9_007_199_254_740_991,
      temperatureMilliC: -1_500,
      heldAs: 'far off',
      station: 'Ø ⌀ µ 測',
    });
    const [outcome] = await keep(reading);
    const kept = (await jobSheet(job.jobId))!.readings.find(({ id }) => id === reading.id);
    expect(outcome).toMatchObject({ id: reading.id, state: 'kept', seq: kept!.seq });
    expect(kept).toEqual({
      ...reading,
      jobId: job.jobId,
      deviceId,
      seq: expect.any(Number),
      receivedAt: expect.stringMatching(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z$/),
    });
  });

  it('keeps once what is sent twice, and says so', async () => {
    const reading = job.reading();
    const [first] = await keep(reading);
    const [second] = await keep(reading);
    expect(second).toEqual({ ...first, state: 'known' });
    expect(await countOf(reading.id)).toBe(1);
  });

  it('keeps once what stands twice in one batch', async () => {
    const reading = job.reading();
    const outcomes = await keep(reading, { ...reading });
    expect(outcomes.map(stateOf)).toEqual(['kept', 'known']);
    expect(await countOf(reading.id)).toBe(1);
  });

  it('refuses what stands twice in one batch with two contents, and keeps the first', async () => {
    const reading = job.reading();
    const outcomes = await keep(reading, { ...reading, text: '18.004' });
    expect(outcomes.map(stateOf)).toEqual(['kept', 'refused']);
    expect(outcomes[1]).toMatchObject({ code: 'reading/other-content', at: 'id' });
  });

  it.each([
    ['text', { text: '18.004' }],
    ['value', { valuePm: 18_004_000_000 }],
    ['unit', { unit: 'in' }],
    ['device time', { deviceTime: '2026-11-25T09:30:00.001+01:00' }],
    ['running number', { deviceSeq: 900_001 }],
    ['hold', { heldAs: 'thimble turn' }],
  ] as const)('refuses an id that is in the book with another %s', async (_, other) => {
    const reading = job.reading();
    await keep(reading);
    const [outcome] = await keep({ ...reading, ...other });
    expect(outcome).toMatchObject({ state: 'refused', code: 'reading/other-content', at: 'id' });
    const kept = (await jobSheet(job.jobId))!.readings.find(({ id }) => id === reading.id);
    expect(kept).toMatchObject(reading);
  });

  it('refuses an id that another device has used, whatever it says', async () => {
    const reading = job.reading();
    await keep(reading);
    const [outcome] = await keepReadings({ deviceId: uuidv7(), entries: [reading] });
    expect(outcome).toMatchObject({ state: 'refused', code: 'reading/other-content' });
  });

  it('refuses a running number of the device that another entry has', async () => {
    const reading = job.reading();
    await keep(reading);
    const [outcome] = await keep(job.reading({ deviceSeq: reading.deviceSeq }));
    expect(outcome).toMatchObject({ code: 'reading/device-seq-taken', at: 'deviceSeq' });
  });

  it('lets two devices count for themselves', async () => {
    const reading = job.reading();
    await keep(reading);
    const other = job.reading({ deviceSeq: reading.deviceSeq });
    const [outcome] = await keepReadings({ deviceId: uuidv7(), entries: [other] });
    expect(outcome!.state).toBe('kept');
  });

  it('judges each entry on its own, so that a bad one does not hold back the rest', async () => {
    const good = [job.reading(), job.reading()];
    const outcomes = await keep(
      good[0],
      'not an object',
      { ...job.reading(), text: '' },
      { ...job.reading(), extra: 1 },
      { ...job.reading(), text: '18\0' },
      { ...job.reading(), station: '\ud800' },
      job.reading({ pieceId: uuidv7() }),
      job.reading({ featureId: uuidv7() }),
      job.reading({ gaugeId: uuidv7() }),
      job.reading({ personId: uuidv7() }),
      job.reading({ pieceId: job.plungers[0]!.id }),
      good[1],
    );
    expect(outcomes.map((one) => ('code' in one ? `${one.code} ${one.at}` : one.state))).toEqual([
      'kept',
      'reading/wrong-shape ',
      'reading/wrong-shape text',
      'reading/wrong-shape ',
      'reading/wrong-shape text',
      'reading/wrong-shape station',
      'reading/no-such-piece pieceId',
      'reading/no-such-feature featureId',
      'reading/no-such-gauge gaugeId',
      'reading/no-such-person personId',
      'reading/piece-of-another-part pieceId',
      'kept',
    ]);
    expect(outcomes.map(({ id }) => id).filter((id) => id === '')).toHaveLength(1);
    const kept = (await jobSheet(job.jobId))!.readings.map(({ id }) => id);
    expect(kept.slice(-2)).toEqual(good.map(({ id }) => id));
  });

  it('keeps a hundred in the order sent', async () => {
    const readings = Array.from({ length: 100 }, () => job.reading()).reverse();
    const outcomes = await keep(...readings);
    expect(outcomes.map(({ id }) => id)).toEqual(readings.map(({ id }) => id));
    const kept = (await jobSheet(job.jobId))!.readings.slice(-100).map(({ id }) => id);
    expect(kept).toEqual(readings.map(({ id }) => id));
  });

  it('names the person who measured', async () => {
    const ruth = { id: uuidv7(), name: 'Ruth' };
    await makeThing('person', ruth, who);
    const [outcome] = await keep(job.reading({ personId: ruth.id }));
    expect(outcome!.state).toBe('kept');
  });

  it('orders by the book, whatever the clocks of devices say', async () => {
    const clocks = [
      '2099-01-01T00:00:00Z',
      '2026-11-24T09:30:00+01:00',
      '2026-11-25T14:30:00+01:00',
      '1970-01-01T00:00:00Z',
    ];
    const readings = clocks.map((deviceTime) => job.reading({ deviceTime }));
    for (const reading of readings) await keep(reading);
    const kept = (await jobSheet(job.jobId))!.readings.slice(-4);
    expect(kept.map(({ deviceTime }) => deviceTime)).toEqual(clocks);
    expect(new Set(kept.map(({ receivedAt }) => receivedAt.slice(0, 4))).size).toBe(1);
  });

  it('keeps each once when two tabs send the same batch at once, in opposite orders', async () => {
    const readings = Array.from({ length: 50 }, () => job.reading());
    const rounds = await Promise.all([
      keep(...readings),
      keep(...readings.toReversed()),
      keep(...readings),
    ]);
    const states = rounds.flat().filter(({ state }) => state === 'kept');
    expect(states).toHaveLength(50);
    expect(rounds.flat().filter(({ state }) => state === 'refused')).toEqual([]);
  });
});

describe('keepCorrections', () => {
  it('keeps a correction of each kind with the job of its reading', async () => {
    const reading = job.reading();
    await keep(reading);
    const corrections = [
      correctionOf(reading.id),
      correctionOf(reading.id, { kind: 'restore' }),
      correctionOf(reading.id, { kind: 'count' }),
      correctionOf(reading.id, {
        kind: 'mistyped',
        text: '.709',
        unit: 'in',
        valuePm: 18_008_600_000,
        resolutionPm: 25_400_000,
      }),
      correctionOf(reading.id, {
        kind: 'move',
        toPieceId: job.liners[1]!.id,
        toFeatureId: job.bore.id,
        toStation: 'end',
        toDirection: 'across',
      }),
    ];
    const outcomes = await correct(...corrections);
    expect(outcomes.map(stateOf)).toEqual(Array(5).fill('kept'));
    const kept = (await jobSheet(job.jobId))!.corrections.slice(-5);
    expect(kept).toMatchObject(corrections.map((one) => ({ ...one, jobId: job.jobId, deviceId })));
  });

  it('leaves the reading as it was', async () => {
    const reading = job.reading();
    await keep(reading);
    await correct(correctionOf(reading.id));
    const kept = (await jobSheet(job.jobId))!.readings.find(({ id }) => id === reading.id);
    expect(kept).toMatchObject(reading);
  });

  it('keeps one that comes before its reading, and shows it with the reading once that has come', async () => {
    const reading = job.reading();
    const early = correctionOf(reading.id);
    expect((await correct(early))[0]!.state).toBe('kept');
    const ids = async () => (await jobSheet(job.jobId))!.corrections.map(({ id }) => id);
    expect(await ids()).not.toContain(early.id);
    await keep(reading);
    expect(await ids()).toContain(early.id);
    const kept = (await jobSheet(job.jobId))!.corrections.find(({ id }) => id === early.id);
    expect(kept!.jobId).toBe(job.jobId);
    expect((await correct(early))[0]!.state).toBe('known');
  });

  it('keeps once what is sent twice, and refuses another content', async () => {
    const reading = job.reading();
    await keep(reading);
    const correction = correctionOf(reading.id);
    const outcomes = [
      ...(await correct(correction)),
      ...(await correct(correction)),
      ...(await correct({ ...correction, reason: 'another' })),
    ];
    expect(outcomes.map(stateOf)).toEqual(['kept', 'known', 'refused']);
    expect(outcomes[2]).toMatchObject({ code: 'correction/other-content' });
  });

  it('refuses what names a place that is not, or lacks what its kind needs', async () => {
    const other = await aJob();
    const reading = job.reading();
    await keep(reading);
    const to = { kind: 'move' as const, toPieceId: job.liners[1]!.id, toFeatureId: job.bore.id };
    const outcomes = await correct(
      correctionOf(reading.id, { ...to, toPieceId: uuidv7() }),
      correctionOf(reading.id, { ...to, toPieceId: other.liners[0]!.id }),
      correctionOf(reading.id, { ...to, toFeatureId: uuidv7() }),
      correctionOf(reading.id, { ...to, toFeatureId: other.bore.id }),
      correctionOf(reading.id, { ...to, toPieceId: job.plungers[0]!.id }),
      correctionOf(reading.id, { personId: uuidv7() }),
      correctionOf(reading.id, { kind: 'mistyped' }),
      correctionOf(reading.id, { kind: 'move' }),
    );
    expect(outcomes.map((one) => ('code' in one ? `${one.code} ${one.at}` : one.state))).toEqual([
      'correction/no-such-piece toPieceId',
      'correction/no-such-piece toPieceId',
      'correction/no-such-feature toFeatureId',
      'correction/no-such-feature toFeatureId',
      'correction/piece-of-another-part toPieceId',
      'correction/no-such-person personId',
      'correction/wrong-shape text',
      'correction/wrong-shape toPieceId',
    ]);
  });
});

async function countOf(id: string): Promise<number> {
  return (await jobSheet(job.jobId))!.readings.filter((reading) => reading.id === id).length;
}
