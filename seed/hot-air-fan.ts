import type { Departure, RunEvent } from '@/lib/schema/run';
import type { Gauge, GaugeSends, Person } from '@/lib/schema/gauge';
import type { JobStart } from '@/lib/schema/new-job';
import type { NewCut } from '@/lib/schema/new-cut';
import type { NewReading } from '@/lib/schema/reading';
import { exampleId } from './ids';

/**
 * The example: "Hot-air fan, batch of eight". Invented, fixed, no randomness and no clock. It is caught in
 * the middle of the work: eight liners bored, six pistons fitted, one on the lathe, a slip held, two sizes
 * to decide about, and a run of crank webs that is growing.
 */
type Row<T> = Omit<T, 'version' | 'createdAt' | 'struckAt'>;

const mm = 1_000_000_000;
const um = 1_000_000;
const sixteenthsOfInchPm = 1_587_500_000;

const gauges = {
  mic: exampleId('gauge', 1),
  bore: exampleId('gauge', 2),
  caliper: exampleId('gauge', 3),
  plug: exampleId('gauge', 4),
};

/** None has been taught how it sends: that is done with the gauge in hand. */
export const exampleGauges: Omit<Row<Gauge>, keyof GaugeSends>[] = [
  {
    id: gauges.mic,
    name: 'Mic 2',
    kind: 'micrometer',
    unit: 'mm',
    resolutionPm: um,
    uncertaintyPm: 300_000,
    rangeLowPm: 0,
    rangeHighPm: 25 * mm,
    checkedOn: '2025-12-14',
    note: 'Zero checked on the 10 mm block before each batch.',
  },
  {
    id: gauges.bore,
    name: 'Bore gauge 1',
    kind: 'bore gauge',
    unit: 'mm',
    resolutionPm: um,
    uncertaintyPm: 300_000,
    rangeLowPm: 10 * mm,
    rangeHighPm: 18 * mm + 500 * um,
    checkedOn: '2026-03-03',
    note: 'Set in Mic 2.',
  },
  {
    id: gauges.caliper,
    name: 'Caliper 1',
    kind: 'caliper',
    unit: 'mm',
    resolutionPm: 10 * um,
    uncertaintyPm: 20 * um,
    rangeLowPm: 0,
    rangeHighPm: 150 * mm,
    checkedOn: '2026-01-20',
    note: '',
  },
  {
    id: gauges.plug,
    name: 'Small-hole gauge',
    kind: 'bore gauge',
    unit: 'mm',
    resolutionPm: um,
    uncertaintyPm: null,
    rangeLowPm: 5 * mm,
    rangeHighPm: 8 * mm,
    checkedOn: null,
    note: 'Never checked against a ring.',
  },
];

export const examplePerson: Row<Person> = { id: exampleId('person', 1), name: 'M. Hale' };

const parts = {
  liner: exampleId('part', 1),
  piston: exampleId('part', 2),
  rod: exampleId('part', 3),
  bush: exampleId('part', 4),
  web: exampleId('part', 5),
  plate: exampleId('part', 6),
};

const features = {
  linerBore: exampleId('feature', 1),
  linerLength: exampleId('feature', 2),
  linerOutside: exampleId('feature', 3),
  pistonOutside: exampleId('feature', 4),
  pistonLength: exampleId('feature', 5),
  pistonSeat: exampleId('feature', 6),
  rodOutside: exampleId('feature', 7),
  bushLength: exampleId('feature', 8),
  webBoss: exampleId('feature', 9),
  plateSlot: exampleId('feature', 10),
};

type FeatureRow = JobStart['features'][number];
const once = { stations: ['middle'], directions: ['A'] };
const unplaced = { isoClass: null, pictureId: null, pictureX: null, pictureY: null };

function feature(
  row: Pick<FeatureRow, 'id' | 'partId' | 'balloon' | 'name' | 'kind' | 'asDrawn'> &
    Partial<FeatureRow> & { nominalPm: number },
): FeatureRow {
  return {
    ...unplaced,
    ...once,
    position: Number(row.balloon),
    unit: 'mm',
    upperPm: null,
    lowerPm: null,
    ...row,
  };
}

export const exampleJob: JobStart = {
  job: {
    id: exampleId('job', 1),
    name: 'Hot-air fan, batch of eight',
    note: 'The example. Everything in it is invented.',
    drawing: 'HAF-3',
    revision: 'B',
    unit: 'mm',
    finishedAt: null,
  },
  parts: [
    { id: parts.liner, position: 1, name: 'Liner', material: 'steel', prefix: 'L', quantity: 8 },
    {
      id: parts.piston,
      position: 2,
      name: 'Power piston',
      material: 'graphite iron',
      prefix: 'P',
      quantity: 8,
    },
    {
      id: parts.rod,
      position: 3,
      name: 'Displacer rod',
      material: 'ground steel bar',
      prefix: 'D',
      quantity: 8,
    },
    { id: parts.bush, position: 4, name: 'Rod bush', material: 'bronze', prefix: 'B', quantity: 8 },
    { id: parts.web, position: 5, name: 'Crank web', material: 'steel', prefix: 'W', quantity: 16 },
    {
      id: parts.plate,
      position: 6,
      name: 'Base plate',
      material: 'cast iron',
      prefix: 'BP',
      quantity: 8,
    },
  ],
  features: [
    feature({
      id: features.linerBore,
      partId: parts.liner,
      balloon: '1',
      name: 'Bore',
      kind: 'bore',
      asDrawn: '18.000 +0.018 / 0',
      nominalPm: 18 * mm,
      upperPm: 18 * um,
      lowerPm: 0,
      stations: ['top', 'middle', 'bottom'],
      directions: ['A', 'B'],
    }),
    feature({
      id: features.linerLength,
      partId: parts.liner,
      balloon: '2',
      name: 'Length',
      kind: 'length',
      asDrawn: '52.00 ± 0.05',
      nominalPm: 52 * mm,
      upperPm: 50 * um,
      lowerPm: -50 * um,
    }),
    feature({
      id: features.linerOutside,
      partId: parts.liner,
      balloon: '3',
      name: 'Outside',
      kind: 'outside',
      asDrawn: '24.000 −0.020 / −0.041',
      nominalPm: 24 * mm,
      upperPm: -20 * um,
      lowerPm: -41 * um,
      directions: ['A', 'B'],
    }),
    feature({
      id: features.pistonOutside,
      partId: parts.piston,
      balloon: '4',
      name: 'Outside',
      kind: 'outside',
      asDrawn: '18.000, to its liner',
      nominalPm: 18 * mm,
      stations: ['crown', 'middle', 'skirt'],
      directions: ['A', 'B'],
    }),
    feature({
      id: features.pistonLength,
      partId: parts.piston,
      balloon: '5',
      name: 'Length',
      kind: 'length',
      asDrawn: '20.0 ± 0.1',
      nominalPm: 20 * mm,
      upperPm: 100 * um,
      lowerPm: -100 * um,
    }),
    feature({
      id: features.pistonSeat,
      partId: parts.piston,
      balloon: '6',
      name: 'Bush seat',
      kind: 'bore',
      asDrawn: '7.000 +0.015 / 0',
      nominalPm: 7 * mm,
      upperPm: 15 * um,
      lowerPm: 0,
      directions: ['A', 'B'],
    }),
    feature({
      id: features.rodOutside,
      partId: parts.rod,
      balloon: '7',
      name: 'Outside',
      kind: 'outside',
      asDrawn: '5/32 in',
      unit: 'in',
      nominalPm: 2.5 * sixteenthsOfInchPm,
      directions: ['A', 'B'],
    }),
    feature({
      id: features.bushLength,
      partId: parts.bush,
      balloon: '8',
      name: 'Length',
      kind: 'length',
      asDrawn: '17.90 ± 0.05',
      nominalPm: 17 * mm + 900 * um,
      upperPm: 50 * um,
      lowerPm: -50 * um,
    }),
    feature({
      id: features.webBoss,
      partId: parts.web,
      balloon: '9',
      name: 'Boss outside',
      kind: 'outside',
      asDrawn: '12.000 0 / −0.027',
      nominalPm: 12 * mm,
      upperPm: 0,
      lowerPm: -27 * um,
      directions: ['A', 'B'],
    }),
    feature({
      id: features.plateSlot,
      partId: parts.plate,
      balloon: '10',
      name: 'Between cheeks',
      kind: 'slot',
      asDrawn: '30.00 +0.10 / 0',
      nominalPm: 30 * mm,
      upperPm: 100 * um,
      lowerPm: 0,
    }),
  ],
  fits: [
    {
      id: exampleId('fit', 1),
      internalFeatureId: features.linerBore,
      externalFeatureId: features.pistonOutside,
      name: 'Power piston in liner',
      way: 'limits',
      classes: null,
      minPm: 8 * um,
      maxPm: 12 * um,
      aimPm: 10 * um,
      governs: 'mean',
    },
  ],
  runs: [
    {
      id: exampleId('run', 1),
      featureId: features.webBoss,
      dial: 'radius',
      divisionPm: 10 * um,
      alikeIds: [],
      zones: false,
      control: 'none',
      together: 1,
      groupOf: 'pieces',
      baseFrom: null,
      baseTo: null,
      follow: 'flat',
      patterns: ['beyond three sigma', 'nine on one side'],
      averageWeightMilli: 200,
      averageWidthMilli: 3000,
      sumReferenceMilli: 500,
      sumDecisionMilli: 5000,
    },
  ],
};

/** Pieces are marked by the server in this order of parts; the id of each is asked for by its mark. */
export type PieceOf = (mark: string) => string;

type Taken = {
  mark: string;
  featureId: string;
  gaugeId: string;
  decimals: number;
  /** Whole steps of the last decimal at each station and direction, in the order of the station plan. */
  steps: readonly number[];
  /** Where the plan breaks off, or where a reading is held as a slip. */
  heldLast?: NewReading['heldAs'];
};

const bores = [7, 11, 4, 13, 8, 2, 10, 16];
const linerLengths = [5201, 5199, 5201, 5202, 5200, 5196, 5201, 5200];
const linerOutsides = [23972, 23969, 23974, 23967, 23970, 23973, 23965, 23971];
const pistons = [17997, 18001, 17991, 18003, 17999, 17994];
const pistonLengths = [2002, 1998, 2001, 2003, 1997, 2000];
const seats = [7006, 7009, 7004, 7018, 7008];
const rods = [3998, 3998, 3997, 3999, 3998, 3998, 3997, 3998];
const bushes = [1788, 1791];
const webs = [-9, -8, -5, -3, -21, -20, -17, -16, -14, -11, -10];
const slots = [3004, 3003, 3004, 3003, 3005, 3004, 3003, 3005];

/** Every reading in the order it was taken; the last word of a held one is its slip. */
function taken(): Taken[] {
  const round = (value: number, at: number) =>
    [0, 1, 2, 3, 4, 5].map((place) => value + (place === at ? 1 : place === (at + 3) % 6 ? -1 : 0));
  const twice = (value: number) => [value, value];
  const numbered = (prefix: string, index: number) => `${prefix}${index + 1}`;
  return [
    ...bores.map((step, i): Taken => ({
      mark: numbered('L', i),
      featureId: features.linerBore,
      gaugeId: gauges.bore,
      decimals: 3,
      steps: round(18_000 + step, i % 6),
    })),
    ...linerLengths.map((step, i): Taken => ({
      mark: numbered('L', i),
      featureId: features.linerLength,
      gaugeId: gauges.caliper,
      decimals: 2,
      steps: [step],
    })),
    ...linerOutsides.map((step, i): Taken => ({
      mark: numbered('L', i),
      featureId: features.linerOutside,
      gaugeId: gauges.mic,
      decimals: 3,
      steps: twice(step),
    })),
    ...pistonLengths.map((step, i): Taken => ({
      mark: numbered('P', i),
      featureId: features.pistonLength,
      gaugeId: gauges.caliper,
      decimals: 2,
      steps: [step],
    })),
    ...pistons.map((step, i): Taken => ({
      mark: numbered('P', i),
      featureId: features.pistonOutside,
      gaugeId: gauges.mic,
      decimals: 3,
      steps: i === 4 ? [17_999, 17_999, 17_998, 17_999, 18_498] : round(step, i % 6),
      ...(i === 4 ? { heldLast: 'thimble turn' as const } : {}),
    })),
    ...seats.map((step, i): Taken => ({
      mark: numbered('P', i),
      featureId: features.pistonSeat,
      gaugeId: gauges.plug,
      decimals: 3,
      steps: i === 3 ? [step - 1, step + 1] : twice(step),
    })),
    ...rods.map((step, i): Taken => ({
      mark: numbered('D', i),
      featureId: features.rodOutside,
      gaugeId: gauges.mic,
      decimals: 3,
      steps: twice(step),
    })),
    ...bushes.map((step, i): Taken => ({
      mark: numbered('B', i),
      featureId: features.bushLength,
      gaugeId: gauges.caliper,
      decimals: 2,
      steps: [step],
    })),
    ...webs.map((step, i): Taken => ({
      mark: numbered('W', i),
      featureId: features.webBoss,
      gaugeId: gauges.mic,
      decimals: 3,
      steps: twice(12_000 + step),
    })),
    ...slots.map((step, i): Taken => ({
      mark: numbered('BP', i),
      featureId: features.plateSlot,
      gaugeId: gauges.caliper,
      decimals: 2,
      steps: [step],
    })),
    {
      mark: 'P7',
      featureId: features.pistonOutside,
      gaugeId: gauges.mic,
      decimals: 3,
      steps: [18_086, 18_087, 18_086],
    },
  ];
}

export const exampleDeviceId = exampleId('device', 1);

/** The readings of the example but for P7 between its cuts, in the order taken, ready to be kept. */
export function exampleReadings(pieceOf: PieceOf): NewReading[] {
  let count = 0;
  return taken().flatMap(({ mark, featureId, gaugeId, decimals, steps, heldLast }) => {
    const { stations, directions } = exampleJob.features.find((row) => row.id === featureId)!;
    return steps.map((step, index): NewReading => {
      count += 1;
      const unitPm = 10 ** (9 - decimals);
      return {
        id: exampleId('reading', count),
        deviceSeq: count,
        deviceTime: timeOf(count),
        personId: examplePerson.id,
        pieceId: pieceOf(mark),
        featureId,
        gaugeId,
        station: stations[Math.floor(index / directions.length) % stations.length]!,
        direction: directions[index % directions.length]!,
        text: (step / 10 ** decimals).toFixed(decimals),
        unit: 'mm',
        valuePm: step * unitPm,
        resolutionPm: unitPm,
        temperatureMilliC: null,
        heldAs: heldLast !== undefined && index === steps.length - 1 ? heldLast : null,
      };
    });
  });
}

/** When the n-th reading was taken; a half is between two of them. */
function timeOf(n: number): string {
  return new Date(Date.UTC(2026, 2, 13, 18, 40) + n * 70_000).toISOString();
}

/** What P7 was before each of its cuts and what was asked for, whole thousandths on diameter. */
const turning = [
  { before: 18_590, asked: 200, after: 150 },
  { before: 18_405, asked: 200, after: 158 },
  { before: 18_217, asked: 140, after: 166 },
];

/**
 * P7 on the lathe: the readings between its cuts, and the cuts. Each was taken after the n-th of the other
 * readings, which keep the numbers they had before there were any cuts.
 */
export function exampleTurning(pieceOf: PieceOf): { readings: NewReading[]; cuts: NewCut[] } {
  const others = exampleReadings(pieceOf);
  const like = others.at(-3)!;
  const readings = turning.map(({ before, after }, i): NewReading => {
    const number = others.length + 1 + i;
    return {
      ...like,
      id: exampleId('reading', number),
      deviceSeq: number,
      deviceTime: timeOf(after + 0.5),
      text: (before / 1000).toFixed(3),
      valuePm: before * um,
    };
  });
  const { pieceId, featureId, personId } = like;
  const cuts = turning.map(({ before, asked, after }, i): NewCut => ({
    id: exampleId('cut', i + 1),
    deviceSeq: others.length + turning.length + 1 + i,
    deviceTime: timeOf(after + 2.5),
    personId,
    pieceId,
    featureId,
    lastReadingId: readings[i]!.id,
    spring: false,
    askedPm: asked * um,
    beforePm: before * um,
    tool: '',
    partnerPieceId: pieceOf('L7'),
    aimPm: 18_000 * um,
    dial: 'radius',
    divisionPm: 10 * um,
    dialUnit: 'mm',
    fineFeed: 1,
    changed: null,
    temperatureMilliC: null,
  }));
  return { readings, cuts };
}

export const exampleEvents: Row<RunEvent>[] = [
  {
    id: exampleId('event', 1),
    jobId: exampleJob.job.id,
    runId: exampleId('run', 1),
    afterOrdinal: 4,
    kind: 'insert changed',
    note: 'corner 2',
    offsetPm: null,
    offsetDial: null,
    at: '2026-03-14T09:06:00.000Z',
  },
  {
    id: exampleId('event', 2),
    jobId: exampleJob.job.id,
    runId: exampleId('run', 1),
    afterOrdinal: 8,
    kind: 'break',
    note: 'tea, 25 minutes',
    offsetPm: null,
    offsetDial: null,
    at: '2026-03-14T09:30:00.000Z',
  },
];

export const exampleDeparture: Row<Departure> = {
  id: exampleId('departure', 1),
  jobId: exampleJob.job.id,
  number: 1,
  partId: parts.rod,
  made: '4 mm ground bar',
  drawn: '5/32 in (3.969)',
  why: 'bar to hand',
  touches: 'rod bush bore, displacer boss',
};
