import { preControlSample } from '@/lib/maths/control/pre-control-sample';
import { preControlSetUp } from '@/lib/maths/control/pre-control-set-up';
import { preControlZone, type PreControlZone } from '@/lib/maths/control/pre-control-zone';
import type { Piece } from '@/lib/schema/part';
import type { Run, RunEvent } from '@/lib/schema/run';
import { startsAfresh } from './run-view';
import { steadyGap } from './steady-gap';
import type { Limits } from './verdict';

/** What one measured piece meant when it was measured. */
export type ZoneMeaning =
  /** Setting up: one more in the middle half. */
  | 'counts'
  /** Setting up: the fifth in a row; the batch may run. */
  | 'approves'
  /** Setting up: one outside the middle half; the count starts again. */
  | 'starts again'
  /** Running: in the middle half, or the second of two was. */
  | 'goes on'
  /** Running: outside the middle half; the very next piece decides. */
  | 'second wanted'
  /** Two outside the middle half on the same side: move the mean. */
  | 'move the mean'
  /** Two outside the middle half on opposite sides: moving the mean would not help. */
  | 'spread too large'
  /** Outside the limits. */
  | 'outside';

export type ZoneStep = {
  piece: Piece;
  sizePm: number;
  zone: PreControlZone;
  phase: 'set up' | 'run';
  /** In the middle half in a row while setting up, this one with them. */
  inARow: number;
  means: ZoneMeaning;
};

/** How far to move the mean, whole divisions of the dial; below zero makes the piece smaller. */
export type ZoneMove = { onDiameterPm: number; onDialPm: number };

export type ZoneRun = {
  /** One a measured piece, in the order made. */
  steps: ZoneStep[];
  /** What is so after the last of them: set up, run, wait for the second of two, or stop. */
  state: 'set up' | 'run' | 'second' | 'stop';
  /** In the middle half in a row so far, while setting up. */
  inARow: number;
  /** Where the machine is to be moved to, after two on the same side; null where nothing says how far. */
  move: ZoneMove | null;
  /** Pieces from the start of one sample of two to the next, once something says how long it keeps. */
  gap: { samplePieces: number; meanGap: number } | null;
  /** The ordinal of the next piece to measure; null when the batch is done. */
  nextOrdinal: number | null;
  /** The tolerance over six scatters, where the scatter is known; zones want 1 or more. */
  spreadFits: number | null;
};

/** What zones need to know of a run. */
export type ZoneFacts = {
  run: Pick<Run, 'dial' | 'divisionPm'>;
  /** All features of the run; left out where it has one. */
  features?: readonly unknown[];
  pieces: readonly { ordinal: number }[];
  points: readonly { piece: Piece; size: { valuePm: number } }[];
  events: readonly RunEvent[];
  limits: Limits;
  drift: { kind: 'line'; scatterMm: number } | { kind: 'too-little' } | null;
};

const setUpCount = 5;
const picoPerMilli = 1e9;

/**
 * A short batch set up and run by zones: what each measured piece meant, and what to do now.
 *
 * The middle half of the tolerance decides. Five in a row in it, piece after piece, let the batch run; one
 * outside it starts the count again, two ask for an adjustment. While it runs, two pieces in a row are a
 * sample: a first one in the middle half is enough; else the next piece decides. After an adjustment (an
 * insert, an offset, a new chucking), or a stop that nobody noted one for, it is set up anew. A piece left
 * unmeasured breaks the row. Null where a limit is missing, and where the run has several features.
 *
 * Sources: [satterthwaite-1954], [shainin], as lib/maths/control/pre-control-*.
 */
export function zoneRun(facts: ZoneFacts): ZoneRun | null {
  const { lowerPm, upperPm } = facts.limits;
  if (lowerPm === null || upperPm === null || !(lowerPm < upperPm)) return null;
  if ((facts.features?.length ?? 1) > 1) return null;
  const limits = { lowerPm, upperPm };
  const stops = adjustments(facts.events);
  const steps = stretches(facts.points, stops).flatMap((stretch) => judge(limits, stretch));
  const last = steps.at(-1);
  const lastOrdinal = last?.piece.ordinal ?? 0;
  const isFresh = last === undefined || stops.some((ordinal) => ordinal >= lastOrdinal);
  const state = isFresh ? 'set up' : stateAfter(last);
  const gap = steadyGap(
    ranBetween(steps, stops),
    state === 'run' ? lastOrdinal - (stops.at(-1) ?? 0) : 0,
  );
  const sampleAt = steps.at(-2)?.means === 'second wanted' ? lastOrdinal - 1 : lastOrdinal;
  const wanted =
    state === 'run' && gap !== null
      ? Math.max(sampleAt + gap.samplePieces, lastOrdinal + 1)
      : lastOrdinal + 1;
  const scatterMm = facts.drift?.kind === 'line' ? facts.drift.scatterMm : 0;
  return {
    steps,
    state,
    inARow: isFresh ? 0 : last.inARow,
    move: isFresh ? null : moveAfter(facts.run, limits, steps),
    gap,
    nextOrdinal: facts.pieces.find(({ ordinal }) => ordinal >= wanted)?.ordinal ?? null,
    spreadFits: scatterMm > 0 ? (upperPm - lowerPm) / (6 * scatterMm * picoPerMilli) : null,
  };
}

/** The ordinals after which the machine was adjusted, each once, rising. */
function adjustments(events: readonly RunEvent[]): number[] {
  const after = events
    .filter(({ kind }) => startsAfresh.has(kind))
    .map((event) => event.afterOrdinal);
  return [...new Set(after)].filter((ordinal) => ordinal > 0).sort((a, b) => a - b);
}

/** Pieces from one adjustment to the next, where the batch was set up and ran between them. */
function ranBetween(steps: readonly ZoneStep[], stops: readonly number[]): number[] {
  return stops.flatMap((stop, i) => {
    const from = stops[i - 1];
    if (from === undefined) return [];
    const ran = steps.some(
      ({ piece, phase, means }) =>
        piece.ordinal > from && piece.ordinal <= stop && (phase === 'run' || means === 'approves'),
    );
    return ran ? [stop - from] : [];
  });
}

type Point = ZoneFacts['points'][number];

/** The points between one adjustment and the next. */
function stretches(points: readonly Point[], stops: readonly number[]): Point[][] {
  const made: Point[][] = [];
  let stretch = -1;
  for (const point of points) {
    const at = stops.filter((ordinal) => ordinal < point.piece.ordinal).length;
    if (at !== stretch) made.push([]);
    stretch = at;
    made.at(-1)!.push(point);
  }
  return made;
}

type PlainLimits = { lowerPm: number; upperPm: number };

/** Sets up, runs, and after a stop sets up again. */
function judge(limits: PlainLimits, points: readonly Point[]): ZoneStep[] {
  const steps: ZoneStep[] = [];
  while (steps.length < points.length) {
    const { steps: settingUp, approved } = setUp(limits, points.slice(steps.length));
    steps.push(...settingUp);
    if (approved) steps.push(...sampled(limits, points.slice(steps.length)));
  }
  return steps;
}

/** To the fifth in a row, or to the end of the pieces that follow each other without one left out. */
function setUp(
  limits: PlainLimits,
  points: readonly Point[],
): { steps: ZoneStep[]; approved: boolean } {
  const gapAt = points.findIndex(
    ({ piece }, i) => i > 0 && piece.ordinal !== points[i - 1]!.piece.ordinal + 1,
  );
  const row = gapAt === -1 ? points : points.slice(0, gapAt);
  const { steps, approvedAt } = preControlSetUp(
    limits,
    row.map(({ size }) => size.valuePm),
  );
  const found = steps.map(({ zone, greens, action }, i): ZoneStep => {
    const step = stepOf(limits, row[i]!, 'set up', greens);
    if (i === approvedAt) return { ...step, means: 'approves' };
    if (action === 'count') return { ...step, means: 'counts' };
    if (action === 'start again') return { ...step, means: 'starts again' };
    if (isOutside(zone)) return { ...step, means: 'outside' };
    const isSameSide = sideOf(zone) === sideOf(steps[i - 1]!.zone);
    return { ...step, means: isSameSide ? 'move the mean' : 'spread too large' };
  });
  return { steps: found, approved: approvedAt !== undefined };
}

/** Samples of two, to a stop or to the end. */
function sampled(limits: PlainLimits, points: readonly Point[]): ZoneStep[] {
  const steps: ZoneStep[] = [];
  for (let i = 0; i < points.length; i += 1) {
    const [first, second] = [points[i]!, points[i + 1]];
    const step = stepOf(limits, first, 'run', setUpCount);
    const alone = preControlSample(limits, first.size.valuePm);
    if (alone.decision === 'go on') {
      steps.push({ ...step, means: 'goes on' });
      continue;
    }
    if (alone.decision === 'outside the limits') return [...steps, { ...step, means: 'outside' }];
    steps.push({ ...step, means: 'second wanted' });
    if (second === undefined) return steps;
    i += 1;
    const both = preControlSample(limits, first.size.valuePm, second.size.valuePm);
    const next = stepOf(limits, second, 'run', setUpCount);
    if (both.decision === 'go on') {
      steps.push({ ...next, means: 'goes on' });
      continue;
    }
    const means = {
      'reset the mean': 'move the mean',
      'spread too large': 'spread too large',
      'outside the limits': 'outside',
      'measure the second': 'second wanted',
    } as const;
    return [...steps, { ...next, means: means[both.decision] }];
  }
  return steps;
}

function stepOf(
  limits: PlainLimits,
  { piece, size }: Point,
  phase: ZoneStep['phase'],
  inARow: number,
): Omit<ZoneStep, 'means'> {
  const zone = preControlZone(limits, size.valuePm);
  return { piece, sizePm: size.valuePm, zone, phase, inARow };
}

function stateAfter({ means }: ZoneStep): ZoneRun['state'] {
  switch (means) {
    case 'counts':
    case 'starts again':
      return 'set up';
    case 'approves':
    case 'goes on':
      return 'run';
    case 'second wanted':
      return 'second';
    default:
      return 'stop';
  }
}

/** From the last two on the same side to the middle of the tolerance, to the nearest whole division. */
function moveAfter(
  { dial, divisionPm }: ZoneFacts['run'],
  { lowerPm, upperPm }: PlainLimits,
  steps: readonly ZoneStep[],
): ZoneMove | null {
  const [before, last] = steps.slice(-2);
  if (before === undefined || last?.means !== 'move the mean') return null;
  const shiftPm = (lowerPm + upperPm - before.sizePm - last.sizePm) / 2;
  const perDial = dial === 'radius' ? 2 : 1;
  const onDialPm = Math.round(shiftPm / perDial / divisionPm) * divisionPm;
  return onDialPm === 0 ? null : { onDialPm, onDiameterPm: onDialPm * perDial };
}

function isOutside(zone: PreControlZone): boolean {
  return zone === 'red low' || zone === 'red high';
}

function sideOf(zone: PreControlZone): 'low' | 'high' | null {
  if (zone === 'green') return null;
  return zone.endsWith('low') ? 'low' : 'high';
}
