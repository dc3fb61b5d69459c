import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { NewCut } from '@/lib/schema/new-cut';
import { changesAfter } from '@/lib/store/changes-after';
import { changeThing } from '@/lib/store/change-thing';
import { closeStore } from '@/lib/store/client';
import { jobSheet } from '@/lib/store/job-sheet';
import { keepCuts } from '@/lib/store/keep-cuts';
import { makeThing } from '@/lib/store/make-thing';
import { uuidv7 } from '@/lib/store/uuid';
import { aJob, who } from './a-job';

type Job = Awaited<ReturnType<typeof aJob>>;
let job: Job;
let deviceSeq = 500;
beforeAll(async () => {
  job = await aJob();
});
afterAll(closeStore);

const { deviceId } = who;
const keep = (...entries: unknown[]) => keepCuts({ deviceId, entries });
const cuts = async () => (await jobSheet(job.jobId))!.cuts;

function aCut(more: Partial<NewCut> = {}): NewCut {
  deviceSeq += 1;
  const { pieceId, featureId } = job.reading();
  return {
    id: uuidv7(),
    deviceTime: '2026-11-25T09:30:00.000+01:00',
    deviceSeq,
    personId: null,
    pieceId,
    featureId,
    lastReadingId: uuidv7(),
    spring: false,
    askedPm: 40_000_000,
    beforePm: 18_086_000_000,
    tool: '',
    partnerPieceId: null,
    aimPm: 18_000_000_000,
    dial: 'radius',
    divisionPm: 25_400_000,
    dialUnit: 'in',
    fineFeed: 1,
    changed: 'insert',
    temperatureMilliC: 22_000,
    ...more,
  };
}

describe('keepCuts', () => {
  it('keeps a cut word for word, with its place and what the server adds', async () => {
    const cut = aCut();
    const [outcome] = await keep(cut);
    const kept = (await cuts()).find(({ id }) => id === cut.id)!;
    expect(kept).toEqual({
      ...cut,
      jobId: job.jobId,
      deviceId,
      ordinal: expect.any(Number),
      afterPm: null,
      version: 1,
      createdAt: expect.stringMatching(/Z$/),
      struckAt: null,
    });
    const [line] = (await changesAfter(0, 1000, job.jobId)).filter(
      ({ thingId }) => thingId === cut.id,
    );
    expect(outcome).toEqual({
      id: cut.id,
      state: 'kept',
      seq: line!.seq,
      receivedAt: kept.createdAt,
    });
    expect(line).toMatchObject({ thing: 'cut', act: 'made', deviceId, jobId: job.jobId });
  });

  it('keeps once what is sent twice, whatever was changed on it since, and says so', async () => {
    const cut = aCut();
    const [first] = await keep(cut);
    expect(await keep(cut, cut)).toEqual([
      { ...first, state: 'known' },
      { ...first, state: 'known' },
    ]);
    await changeThing('cut', cut.id, { version: 1, struck: true }, who);
    expect(await keep(cut)).toEqual([{ ...first, state: 'known' }]);
    expect((await cuts()).filter(({ id }) => id === cut.id)).toHaveLength(1);
  });

  it('gives cuts the next place, so that two devices never want the same', async () => {
    const [a, b] = [aCut(), { ...aCut(), deviceSeq: 1 }];
    const before = Math.max(...(await cuts()).map(({ ordinal }) => ordinal));
    await keep(a);
    await keepCuts({ deviceId: uuidv7(), entries: [b] });
    const ordinalOf = async (id: string) => (await cuts()).find((cut) => cut.id === id)!.ordinal;
    expect([await ordinalOf(a.id), await ordinalOf(b.id)]).toEqual([before + 1, before + 2]);
  });

  it('judges each on its own: one slip does not hold back the rest', async () => {
    const [good, taken] = [aCut(), aCut()];
    const outcomes = await keep(
      { ...aCut(), askedPm: -1 },
      good,
      { ...taken, deviceSeq: good.deviceSeq },
      { ...aCut(), pieceId: uuidv7() },
      { ...aCut(), featureId: uuidv7() },
      { ...aCut(), personId: uuidv7() },
      { ...good, askedPm: 1 },
      aCut({ tool: 'a\u0000b' }),
      'nothing',
    );
    expect(outcomes.map((one) => ('code' in one ? `${one.code} ${one.at}` : one.state))).toEqual([
      'cut/wrong-shape askedPm',
      'kept',
      'cut/device-seq-taken deviceSeq',
      'cut/no-such-piece pieceId',
      'cut/no-such-feature featureId',
      'cut/no-such-person personId',
      'cut/other-content id',
      'cut/wrong-shape tool',
      'cut/wrong-shape ',
    ]);
  });

  it('leaves the cuts of other programs as they were: what is not said is not known', async () => {
    const { pieceId, featureId } = job.reading();
    const bare = {
      id: uuidv7(),
      jobId: job.jobId,
      pieceId,
      featureId,
      ordinal: 900,
      lastReadingId: null,
      spring: true,
      askedPm: 0,
      beforePm: 18_000_000_000,
      afterPm: null,
      tool: '',
    };
    expect(await makeThing('cut', bare, who)).toMatchObject({ state: 'made' });
    expect(await makeThing('cut', bare, who)).toMatchObject({ state: 'known' });
    expect((await cuts()).find(({ id }) => id === bare.id)).toMatchObject({
      ...bare,
      dial: null,
      changed: null,
      deviceSeq: null,
    });
  });
});

describe('the fate of a piece', () => {
  it('is none until somebody says so, and is said and taken back as any change', async () => {
    const piece = (await jobSheet(job.jobId))!.pieces[0]!;
    expect(piece.fate).toBeNull();
    const scrapped = await changeThing('piece', piece.id, { version: 1, fate: 'scrapped' }, who);
    expect(scrapped).toMatchObject({ state: 'changed', row: { fate: 'scrapped', version: 2 } });
    const back = await changeThing('piece', piece.id, { version: 2, fate: null }, who);
    expect(back).toMatchObject({ state: 'changed', row: { fate: null } });
  });
});
