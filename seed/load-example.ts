import { findThings } from '@/lib/store/find-things';
import { makeThing } from '@/lib/store/make-thing';
import { keepReadings } from '@/lib/store/readings';
import { startJob } from '@/lib/store/start-job';
import { batchMax } from '@/lib/schema/reading';
import {
  exampleDeparture,
  exampleDeviceId,
  exampleEvents,
  exampleGauges,
  exampleJob,
  examplePerson,
  exampleReadings,
} from './hot-air-fan';

/**
 * Loads the example job, its gauges and its readings. Safe to repeat: what is in the book stays as it is.
 *
 * @throws {Error} when the notebook refuses a row of the example
 */
export async function loadExample(): Promise<{ jobId: string }> {
  const who = { deviceId: exampleDeviceId, personId: null };
  const made: { state: string }[] = [
    ...(await inTurn(exampleGauges, (gauge) => makeThing('gauge', gauge, who))),
    await makeThing('person', examplePerson, who),
    await startJob(exampleJob, who),
  ];
  const jobId = exampleJob.job.id;
  const pieces = await findThings('piece', { jobId });
  const pieceOf = (mark: string) => pieces.find((piece) => piece.mark === mark)!.id;
  const readings = exampleReadings(pieceOf);
  for (let from = 0; from < readings.length; from += batchMax) {
    const entries = readings.slice(from, from + batchMax);
    made.push(...(await keepReadings({ deviceId: exampleDeviceId, entries })));
  }
  made.push(...(await inTurn(exampleEvents, (event) => makeThing('runEvent', event, who))));
  made.push(await makeThing('departure', exampleDeparture, who));

  const refused = made.find(({ state }) => state === 'refused');
  if (refused !== undefined) throw new Error(`the example was refused: ${JSON.stringify(refused)}`);
  return { jobId };
}

async function inTurn<Item, Done>(items: readonly Item[], keep: (item: Item) => Promise<Done>) {
  const done: Done[] = [];
  for (const item of items) done.push(await keep(item));
  return done;
}
