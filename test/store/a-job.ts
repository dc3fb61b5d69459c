import { plainRunChoices } from '@/lib/rules/run-choices';
import type { JobStart } from '@/lib/schema/new-job';
import type { NewCorrection, NewReading } from '@/lib/schema/reading';
import { findThings } from '@/lib/store/find-things';
import { makeThing } from '@/lib/store/make-thing';
import { startJob } from '@/lib/store/start-job';
import type { New } from '@/lib/store/thing-types';
import { uuidv7 } from '@/lib/store/uuid';

export const who = { deviceId: uuidv7(), personId: null };

/** The start of a job: a liner with a bore and a plunger with an outside, a fit of the two, a run. */
export function jobStart(quantity = 3): JobStart {
  const [liner, plunger, bore, outside] = [uuidv7(), uuidv7(), uuidv7(), uuidv7()];
  return {
    job: newJob(),
    parts: [
      { id: liner, position: 0, name: 'Liner', material: 'cast iron', prefix: 'L', quantity },
      { id: plunger, position: 1, name: 'Plunger', material: '', prefix: 'P', quantity: 2 },
    ],
    features: [
      { ...newFeature(), id: bore, partId: liner },
      { ...newFeature(), id: outside, partId: plunger, position: 1, kind: 'outside', balloon: '2' },
    ],
    fits: [newFit(bore, outside)],
    runs: [
      { id: uuidv7(), featureId: bore, dial: 'radius', divisionPm: 20_000_000, ...plainRunChoices },
    ],
  };
}

export function newJob(): New<'job'> {
  return {
    id: uuidv7(),
    name: 'Hot-air fan',
    note: '',
    drawing: 'F-12',
    revision: 'B',
    unit: 'mm',
    finishedAt: null,
  };
}

export function newFeature(): Omit<New<'feature'>, 'jobId' | 'partId'> {
  return {
    id: uuidv7(),
    position: 0,
    balloon: '1',
    name: 'working diameter',
    kind: 'bore',
    asDrawn: '18 H7',
    unit: 'mm',
    nominalPm: 18_000_000_000,
    upperPm: 18_000_000,
    lowerPm: 0,
    isoClass: 'H7',
    stations: ['mouth', 'middle', 'end'],
    directions: ['along', 'across'],
    pictureId: null,
    pictureX: null,
    pictureY: null,
  };
}

export function newFit(bore: string, outside: string): Omit<New<'fit'>, 'jobId'> {
  return {
    id: uuidv7(),
    internalFeatureId: bore,
    externalFeatureId: outside,
    name: 'Plunger in liner',
    way: 'limits',
    classes: null,
    minPm: 6_000_000,
    maxPm: 14_000_000,
    aimPm: 10_000_000,
    governs: 'extreme',
  };
}

export function newGauge(): New<'gauge'> {
  return {
    id: uuidv7(),
    name: 'Micrometer 0-25',
    kind: 'micrometer',
    unit: 'mm',
    resolutionPm: 1_000_000,
    uncertaintyPm: null,
    rangeLowPm: 0,
    rangeHighPm: 25_000_000_000,
    checkedOn: null,
    note: '',
  };
}

/** A job and a gauge in the book, and what readings of the first liner's bore are made of. */
export async function aJob(quantity = 3) {
  const start = jobStart(quantity);
  const gauge = newGauge();
  await startJob(start, who);
  await makeThing('gauge', gauge, who);
  const jobId = start.job.id;
  const pieces = await findThings('piece', { jobId });
  const [bore, outside] = start.features;
  const liners = pieces.filter(({ partId }) => partId === bore!.partId);
  const plungers = pieces.filter(({ partId }) => partId === outside!.partId);
  const reading = (more: Partial<NewReading> = {}): NewReading => ({
    ...newReading(),
    pieceId: liners[0]!.id,
    featureId: bore!.id,
    gaugeId: gauge.id,
    ...more,
  });
  const [liner, plunger] = start.parts;
  return {
    start,
    jobId,
    gaugeId: gauge.id,
    liner: liner!,
    plunger: plunger!,
    bore: bore!,
    outside: outside!,
    fit: start.fits[0]!,
    run: start.runs[0]!,
    liners,
    plungers,
    reading,
  };
}

let deviceSeq = 0;

function newReading(): Omit<NewReading, 'pieceId' | 'featureId' | 'gaugeId'> {
  deviceSeq += 1;
  return {
    id: uuidv7(),
    deviceTime: '2026-11-25T09:30:00.000+01:00',
    deviceSeq,
    personId: null,
    text: '18.003',
    unit: 'mm',
    valuePm: 18_003_000_000,
    resolutionPm: 1_000_000,
    station: 'mouth',
    direction: 'along',
    temperatureMilliC: null,
    heldAs: null,
  };
}

export function correctionOf(readingId: string, more: Partial<NewCorrection> = {}): NewCorrection {
  deviceSeq += 1;
  return {
    id: uuidv7(),
    deviceTime: '2026-11-25T09:31:00.000+01:00',
    deviceSeq,
    personId: null,
    readingId,
    kind: 'void',
    reason: 'slipped off the edge',
    toPieceId: null,
    toFeatureId: null,
    toStation: null,
    toDirection: null,
    text: null,
    unit: null,
    valuePm: null,
    resolutionPm: null,
    ...more,
  };
}
