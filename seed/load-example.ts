import { changeThing } from '@/lib/store/change-thing';
import { findThings } from '@/lib/store/find-things';
import { jobSheet } from '@/lib/store/job-sheet';
import { keepCuts } from '@/lib/store/keep-cuts';
import { makeThing } from '@/lib/store/make-thing';
import { keepReadings } from '@/lib/store/readings';
import { startJob } from '@/lib/store/start-job';
import { batchMax, type NewReading } from '@/lib/schema/reading';
import { exampleBalloons, exampleDrawing } from './drawing';
import {
  exampleDeparture,
  exampleDeviceId,
  exampleEvents,
  exampleGauges,
  exampleJob,
  examplePerson,
  exampleReadings,
  exampleTurning,
} from './hot-air-fan';

const who = { deviceId: exampleDeviceId, personId: null };

/**
 * Loads the example job, its gauges and its readings. Safe to repeat: what is in the book stays as it is.
 *
 * @throws {Error} when the notebook refuses a row of the example
 */
export async function loadExample(): Promise<{ jobId: string }> {
  const made: { state: string }[] = [
    ...(await inTurn(exampleGauges, (gauge) => makeThing('gauge', gauge, who))),
    await makeThing('person', examplePerson, who),
    await startJob(exampleJob, who),
  ];
  const jobId = exampleJob.job.id;
  const pieces = await findThings('piece', { jobId });
  const pieceOf = (mark: string) => pieces.find((piece) => piece.mark === mark)!.id;
  const others = exampleReadings(pieceOf);
  const turned = exampleTurning(pieceOf);
  const held = new Set((await jobSheet(jobId))?.readings.map(({ id }) => id));
  // An example from before its piece was turned stays so: what P7 was then would come after what it is.
  const isOlder = held.has(others.at(-1)!.id) && !held.has(turned.readings.at(-1)!.id);
  const readings = isOlder ? others : inOrderTaken([...others, ...turned.readings]);
  for (let from = 0; from < readings.length; from += batchMax) {
    const entries = readings.slice(from, from + batchMax);
    made.push(...(await keepReadings({ deviceId: exampleDeviceId, entries })));
  }
  if (!isOlder) {
    made.push(...(await keepCuts({ deviceId: exampleDeviceId, entries: turned.cuts })));
    made.push(await makeThing('picture', exampleDrawing, who));
    made.push(...(await inTurn(exampleBalloons, placeBalloon)));
  }
  made.push(...(await inTurn(exampleEvents, (event) => makeThing('runEvent', event, who))));
  made.push(await makeThing('departure', exampleDeparture, who));

  const refused = made.find(({ state }) => state === 'refused');
  if (refused !== undefined) throw new Error(`the example was refused: ${JSON.stringify(refused)}`);
  return { jobId };
}

/** A feature that somebody has changed since it was made keeps what they said. */
async function placeBalloon({ featureId, place }: (typeof exampleBalloons)[number]) {
  const done = await changeThing('feature', featureId, { version: 1, ...place }, who);
  return done.state === 'stale' ? { state: 'known' } : done;
}

function inOrderTaken(readings: NewReading[]): NewReading[] {
  return readings.sort((a, b) => (a.deviceTime < b.deviceTime ? -1 : 1));
}

async function inTurn<Item, Done>(items: readonly Item[], keep: (item: Item) => Promise<Done>) {
  const done: Done[] = [];
  for (const item of items) done.push(await keep(item));
  return done;
}
