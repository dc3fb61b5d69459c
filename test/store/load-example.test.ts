import { afterAll, expect, it } from 'vitest';
import { batchMax } from '@/lib/schema/reading';
import { closeStore } from '@/lib/store/client';
import { findThings } from '@/lib/store/find-things';
import { jobSheet } from '@/lib/store/job-sheet';
import { makeThing } from '@/lib/store/make-thing';
import { keepReadings } from '@/lib/store/readings';
import { startJob } from '@/lib/store/start-job';
import {
  exampleDeviceId,
  exampleGauges,
  exampleJob,
  examplePerson,
  exampleReadings,
} from '@/seed/hot-air-fan';
import { loadExample } from '@/seed/load-example';

const who = { deviceId: exampleDeviceId, personId: null };

afterAll(closeStore);

it('leaves an example as it was in a notebook that has it from before its piece was turned', async () => {
  for (const gauge of exampleGauges) await makeThing('gauge', gauge, who);
  await makeThing('person', examplePerson, who);
  await startJob(exampleJob, who);
  const jobId = exampleJob.job.id;
  const pieces = await findThings('piece', { jobId });
  const older = exampleReadings((mark) => pieces.find((piece) => piece.mark === mark)!.id);
  for (let from = 0; from < older.length; from += batchMax) {
    const entries = older.slice(from, from + batchMax);
    await keepReadings({ deviceId: exampleDeviceId, entries });
  }

  await loadExample();
  const { readings, cuts } = (await jobSheet(jobId))!;
  expect(readings.map(({ id }) => id).sort()).toEqual(older.map(({ id }) => id).sort());
  expect(cuts).toEqual([]);
});
