import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { NewStrike } from '@/lib/schema/new-strike';
import { changesAfter } from '@/lib/store/changes-after';
import { changeThing } from '@/lib/store/change-thing';
import { closeStore, store } from '@/lib/store/client';
import { jobSheet } from '@/lib/store/job-sheet';
import { keepCuts } from '@/lib/store/keep-cuts';
import { keepRunEvents } from '@/lib/store/keep-run-events';
import { keepStrikes } from '@/lib/store/keep-strikes';
import { uuidv7 } from '@/lib/store/uuid';
import { aJob, who } from './a-job';

let job: Awaited<ReturnType<typeof aJob>>;
let deviceSeq = 800;
beforeAll(async () => {
  job = await aJob();
});
afterAll(closeStore);

const { deviceId } = who;
const keep = (...entries: unknown[]) => keepStrikes({ deviceId, entries });
const deviceTime = '2026-11-26T09:30:00.000+01:00';
const noted = () => {
  deviceSeq += 1;
  return { id: uuidv7(), deviceTime, deviceSeq, personId: null };
};
const aStrike = (more: Partial<NewStrike> & Pick<NewStrike, 'thing' | 'thingId'>): NewStrike => ({
  ...noted(),
  struck: true,
  ...more,
});

async function aCut(): Promise<string> {
  const { pieceId, featureId } = job.reading();
  const sizes = { lastReadingId: null, spring: false, askedPm: 0, beforePm: 18_000_000_000 };
  const cut = { ...noted(), pieceId, featureId, ...sizes, tool: '' };
  expect(await keepCuts({ deviceId, entries: [cut] })).toMatchObject([{ state: 'kept' }]);
  return cut.id;
}

async function anEvent(): Promise<string> {
  const runId = (await jobSheet(job.jobId))!.runs[0]!.id;
  const said = { kind: 'coolant', note: '', offsetPm: null, offsetDial: null };
  const event = { ...noted(), runId, afterOrdinal: 1, ...said };
  expect(await keepRunEvents({ deviceId, entries: [event] })).toMatchObject([{ state: 'kept' }]);
  return event.id;
}

const cutOf = async (id: string) => (await jobSheet(job.jobId))!.cuts.find((one) => one.id === id)!;
const eventOf = async (id: string) =>
  (await jobSheet(job.jobId))!.runEvents.find((one) => one.id === id)!;
const linesOf = async (id: string) =>
  (await changesAfter(0, 1000, job.jobId)).filter(({ thingId }) => thingId === id);

describe('keepStrikes', () => {
  it('strikes out a cut, with its line in the change log, and puts it back', async () => {
    const thingId = await aCut();
    const [out] = await keep(aStrike({ thing: 'cut', thingId }));
    const struck = await cutOf(thingId);
    expect(struck).toMatchObject({ version: 2, struckAt: expect.stringMatching(/Z$/) });
    const line = (await linesOf(thingId)).at(-1)!;
    expect(line).toMatchObject({ thing: 'cut', act: 'struck', deviceId, jobId: job.jobId });
    expect(out).toMatchObject({ state: 'kept', seq: line.seq, receivedAt: struck.struckAt });

    await keep(aStrike({ thing: 'cut', thingId, struck: false }));
    expect(await cutOf(thingId)).toMatchObject({ version: 3, struckAt: null });
    expect((await linesOf(thingId)).map(({ act }) => act)).toEqual(['made', 'struck', 'put back']);
  });

  it('does once what is sent twice, whatever was done to the thing since', async () => {
    const thingId = await anEvent();
    const strike = aStrike({ thing: 'runEvent', thingId });
    const [first] = await keep(strike);
    expect(await keep(strike, strike)).toEqual([
      { ...first, state: 'known' },
      { ...first, state: 'known' },
    ]);
    await changeThing('runEvent', thingId, { version: 2, struck: false }, who);
    expect(await keep(strike)).toEqual([{ ...first, state: 'known' }]);
    expect(await eventOf(thingId)).toMatchObject({ version: 3, struckAt: null });
  });

  it('leaves alone what stands so already', async () => {
    const thingId = await anEvent();
    await keep(aStrike({ thing: 'runEvent', thingId }));
    const before = await eventOf(thingId);
    const lines = await linesOf(thingId);
    const [outcome] = await keep(aStrike({ thing: 'runEvent', thingId }));
    expect(outcome).toMatchObject({ state: 'kept', seq: lines.at(-1)!.seq });
    expect(await eventOf(thingId)).toEqual(before);
    expect(await linesOf(thingId)).toEqual(lines);
  });

  it('does not put back what the book would not take any more', async () => {
    const thingId = await aCut();
    await keep(aStrike({ thing: 'cut', thingId }));
    const { ordinal, pieceId, featureId } = await cutOf(thingId);
    const { prisma } = await store();
    const other = await aCut();
    await prisma.cut.updateMany({ where: { id: other, pieceId, featureId }, data: { ordinal } });
    const [outcome] = await keep(aStrike({ thing: 'cut', thingId, struck: false }));
    expect(outcome).toMatchObject({ state: 'refused', code: 'strike/ordinal-taken' });
    expect(await cutOf(thingId)).toMatchObject({ struckAt: expect.any(String) });
  });

  it('judges each on its own: one slip does not hold back the rest', async () => {
    const [cut, event] = [await aCut(), await anEvent()];
    const good = aStrike({ thing: 'cut', thingId: cut });
    const outcomes = await keep(
      { ...aStrike({ thing: 'cut', thingId: cut }), thing: 'piece' },
      good,
      { ...aStrike({ thing: 'runEvent', thingId: event }), deviceSeq: good.deviceSeq },
      aStrike({ thing: 'cut', thingId: event }),
      aStrike({ thing: 'runEvent', thingId: cut }),
      aStrike({ thing: 'runEvent', thingId: event, personId: uuidv7() }),
      { ...good, struck: false },
    );
    expect(outcomes.map((one) => ('code' in one ? `${one.code} ${one.at}` : one.state))).toEqual([
      'strike/wrong-shape thing',
      'kept',
      'strike/device-seq-taken deviceSeq',
      'strike/no-such-cut thingId',
      'strike/no-such-event thingId',
      'strike/no-such-person personId',
      'strike/other-content id',
    ]);
    expect(await eventOf(event)).toMatchObject({ version: 1, struckAt: null });
  });
});
