import { afterAll, describe, expect, it } from 'vitest';
import { changeThing } from '@/lib/store/change-thing';
import { closeStore } from '@/lib/store/client';
import { findThings } from '@/lib/store/find-things';
import { jobSheet } from '@/lib/store/job-sheet';
import { startJob } from '@/lib/store/start-job';
import { uuidv7 } from '@/lib/store/uuid';
import { jobStart, newFit, who } from './a-job';

afterAll(closeStore);

describe('startJob', () => {
  it('keeps the whole job in one go, with marked pieces', async () => {
    const start = jobStart(3);
    expect(await startJob(start, who)).toEqual({ state: 'made', jobId: start.job.id });
    const sheet = (await jobSheet(start.job.id))!;
    expect(sheet).toMatchObject({
      job: start.job,
      parts: start.parts,
      features: start.features,
      fits: start.fits,
      runs: start.runs,
    });
    const marks = sheet.pieces.map(({ mark }) => mark).toSorted();
    expect(marks).toEqual(['L1', 'L2', 'L3', 'P1', 'P2']);
  });

  it('knows again a job it has started, whatever was changed on it since', async () => {
    const start = jobStart();
    await startJob(start, who);
    await changeThing('job', start.job.id, { version: 1, name: 'Renamed' }, who);
    expect(await startJob(start, who)).toEqual({ state: 'known', jobId: start.job.id });
    expect((await jobSheet(start.job.id))!.pieces).toHaveLength(5);
  });

  it('refuses the same job with another content', async () => {
    const start = jobStart();
    await startJob(start, who);
    const other = structuredClone(start);
    other.parts[0]!.quantity = 4;
    expect(await startJob(other, who)).toMatchObject({ code: 'other-content', at: 'job.id' });
  });

  it('refuses an id that another job has, and keeps nothing of the rest', async () => {
    const start = jobStart();
    await startJob(start, who);
    const other = jobStart();
    other.features[0]!.id = start.features[0]!.id;
    other.fits = [newFit(start.features[0]!.id, other.features[1]!.id)];
    other.runs = [];
    const refused = await startJob(other, who);
    expect(refused).toMatchObject({ code: 'other-content', at: 'features.0.id' });
    expect(await findThings('job', { id: other.job.id })).toEqual([]);
    expect(await findThings('part', { id: other.parts[0]!.id })).toEqual([]);
  });

  it('refuses what makes no sense in itself, and says where', async () => {
    const start = jobStart();
    const [bore, outside] = start.features;
    const cases: [Partial<typeof start>, string][] = [
      [{ parts: [start.parts[0]!, start.parts[0]!] }, 'id-twice parts.1.id'],
      [
        { parts: start.parts.map((part) => ({ ...part, quantity: 2501 })) },
        'too-many-pieces parts',
      ],
      [{ features: [bore!, { ...outside!, partId: uuidv7() }] }, 'no-such-part features.1.partId'],
      [{ features: [{ ...bore!, lowerPm: 1, upperPm: 0 }] }, 'limits-crossed features.0.lowerPm'],
      [{ features: [{ ...bore!, pictureId: uuidv7() }] }, 'no-such-picture features.0.pictureId'],
      [{ fits: [newFit(outside!.id, bore!.id)] }, 'not-internal fits.0.internalFeatureId'],
      [{ fits: [newFit(bore!.id, bore!.id)] }, 'not-external fits.0.externalFeatureId'],
      [{ fits: [newFit(bore!.id, uuidv7())] }, 'no-such-feature fits.0.externalFeatureId'],
      [{ fits: [{ ...start.fits[0]!, aimPm: 0 }] }, 'aim-outside fits.0.aimPm'],
      [{ runs: [{ ...start.runs[0]!, featureId: uuidv7() }] }, 'no-such-feature runs.0.featureId'],
      [{ runs: [{ ...start.runs[0]!, alikeIds: [uuidv7()] }] }, 'no-such-feature runs.0.alikeIds'],
      [{ runs: [{ ...start.runs[0]!, alikeIds: [bore!.id] }] }, 'no-such-feature runs.0.alikeIds'],
    ];
    for (const [change, wanted] of cases) {
      const refused = await startJob({ ...start, ...change }, who);
      expect('code' in refused ? `${refused.code} ${refused.at}` : refused.state).toBe(wanted);
    }
    expect(await findThings('job', { id: start.job.id })).toEqual([]);
  });

  it('gives jobs that start at once numbers of their own', async () => {
    const starts = Array.from({ length: 5 }, () => jobStart(1));
    await Promise.all(starts.map((start) => startJob(start, who)));
    const ids = new Set(starts.map(({ job }) => job.id));
    const numbers = (await findThings('job'))
      .filter(({ id }) => ids.has(id))
      .map((one) => one.number);
    expect(new Set(numbers).size).toBe(5);
  });
});
