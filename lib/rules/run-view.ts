import { driftSinceEvent, type Drift } from '@/lib/maths/control/drift-since-event';
import { restartOffset } from '@/lib/maths/control/restart-offset';
import type { Feature } from '@/lib/schema/feature';
import type { Piece } from '@/lib/schema/part';
import type { Run, RunEvent } from '@/lib/schema/run';
import { cellKey, counted, type Cell, type Cells } from './cells';
import { runLimits } from './run-limits';
import { runPlaces, type RunPlace } from './run-places';
import type { Size } from './size';
import { guardFactor, type Limits } from './verdict';

/** One measured turn of a run, in the order made. */
export type RunPoint = {
  piece: Piece;
  feature: Feature;
  /** Its turn in the run, and how it is named there. */
  ordinal: number;
  mark: string;
  size: Size;
  /** What is charted, pm: the size; with several features its departure from its own nominal. */
  valuePm: number;
  cell: Cell;
  /** Made before the last event that starts the drift afresh. */
  earlier: boolean;
};

/** A turn whose readings were all set aside: it stays in the record and counts for nothing. */
export type SetAside = {
  piece: Piece;
  feature: Feature;
  ordinal: number;
  mark: string;
  /** What its last struck reading said, charted as the others are, pm. */
  valuePm: number;
  /** The reason given; empty where there was none. */
  reason: string;
  cell: Cell;
  earlier: boolean;
};

/** The offset that brings the next piece back to where a drifting run should restart. */
export type OffsetAdvice = {
  /** The last piece to make before putting it in. */
  afterOrdinal: number;
  onDiameterPm: number;
  onDialPm: number;
  /** Where the piece after it comes out. */
  restartPm: number;
};

export type RunView = {
  run: Run;
  /** The feature the run was started for. */
  feature: Feature;
  /** All its features, that one first. */
  features: Feature[];
  /** Every turn, measured or not, in the order made. */
  pieces: RunPlace[];
  points: RunPoint[];
  aside: SetAside[];
  /** Turns that anything was read of, whatever became of it: groups are counted by them. */
  read: ReadonlySet<number>;
  events: RunEvent[];
  /** What charted values are measured from, pm: the nominal; with several features nothing. */
  nominalPm: number;
  /** Limits in the terms of the charted values; open where the features differ. */
  limits: Limits;
  /** Several features whose limits are not alike about their nominals: none is drawn. */
  limitsDiffer: boolean;
  /** The coarsest gauge that told a size, pm; null before the first. */
  resolutionPm: number | null;
  drift: Drift | null;
  /** The next turn to make; null when the batch is done. */
  nextPiece: RunPlace | null;
  /** How many more pieces may be made before acting; null when nothing drifts towards a limit. */
  piecesLeft: number | null;
  /** The turn after which to act; null where nothing drifts to a limit before the batch ends. */
  actAfter: number | null;
  offset: OffsetAdvice | null;
  /** Why nothing is put forward although the drift meets a limit before the batch ends; null otherwise. */
  noOffset: NoOffset | null;
};

/** Why there is no offset for a drift that has to be dealt with. */
export type NoOffset =
  /** What is wanted is less than the dial can be moved by. */
  | 'less than a division'
  /** A drift meets its one limit, and nothing says where to begin anew. */
  | 'one limit'
  /** With the margin taken off there is no room to begin anew between the limits. */
  | 'no room';

/** Two-sided confidence of the band that is drawn and of where it meets the limit. */
const confidence = 0.95;

const picoPerMilli = 1e9;

/** Events after which the sizes before say nothing about the sizes after. */
export const startsAfresh: ReadonlySet<RunEvent['kind']> = new Set([
  'insert changed',
  'offset moved',
  're-chucked',
]);

/**
 * A run as it stands: its pieces in the order made, the drift since the last event that starts it
 * afresh (insert changed, offset moved, re-chucked; a break or coolant only leaves a mark), and what
 * to do about it. Several features alike are charted as departures from their own nominals. Null while
 * its feature is gone.
 */
export function runView(
  run: Run,
  byId: ReadonlyMap<string, Feature>,
  allPieces: readonly Piece[],
  allEvents: readonly RunEvent[],
  cells: Cells,
): RunView | null {
  const feature = byId.get(run.featureId);
  if (feature === undefined) return null;
  const features = [feature, ...run.alikeIds.flatMap((id) => byId.get(id) ?? [])];
  const pieces = runPlaces(features, allPieces, cells);
  const events = allEvents
    .filter((event) => event.runId === run.id && event.struckAt === null)
    .sort((a, b) => a.afterOrdinal - b.afterOrdinal || (a.at < b.at ? -1 : 1));
  const fresh = events.filter((event) => startsAfresh.has(event.kind)).map((e) => e.afterOrdinal);
  const lastFresh = Math.max(0, ...fresh);

  const nominalPm = features.length === 1 ? feature.nominalPm : 0;
  const { points, aside, read } = measured(pieces, lastFresh, features.length > 1, cells);
  const { limits, limitsDiffer } = runLimits(features);
  const drift = driftOf(points, fresh, limits, nominalPm);
  const lastMade = points.at(-1)?.ordinal ?? 0;
  const ahead = drift?.kind === 'line' && drift.ahead.kind === 'meets' ? drift.ahead : null;
  // Up to where the drawn band meets the limit: the words and the picture say the same piece.
  const piecesLeft =
    ahead === null ? null : Math.max(0, Math.floor(ahead.crossing.first) - lastMade);
  // Only where pieces are left to be made by then is there something to do.
  const lastGood = lastMade + (piecesLeft ?? Infinity);
  const actAfter = lastGood < (pieces.at(-1)?.ordinal ?? 0) ? lastGood : null;
  const advice =
    ahead === null || actAfter === null
      ? null
      : offsetAdvice(run, {
          nominalPm,
          limits,
          drift: drift as Drift & { kind: 'line' },
          side: ahead.side,
          afterOrdinal: actAfter,
          standardPm: points.at(-1)!.size.standardPm,
        });
  return {
    run,
    feature,
    features,
    pieces,
    points,
    aside,
    read,
    events,
    nominalPm,
    limits,
    limitsDiffer,
    resolutionPm: points.reduce<number | null>((coarsest, { size }) => {
      const stepPm = cells.gauges.get(size.gaugeId)?.resolutionPm ?? null;
      return stepPm === null ? coarsest : Math.max(coarsest ?? 0, stepPm);
    }, null),
    drift,
    nextPiece: pieces.find((place) => place.ordinal > lastMade) ?? null,
    piecesLeft,
    actAfter,
    offset: typeof advice === 'string' ? null : advice,
    noOffset: typeof advice === 'string' ? advice : null,
  };
}

/** The turns that have a size, those that were set aside, and all that were read at all. */
function measured(
  places: readonly RunPlace[],
  lastFresh: number,
  asDepartures: boolean,
  cells: Cells,
): { points: RunPoint[]; aside: SetAside[]; read: Set<number> } {
  const points: RunPoint[] = [];
  const aside: SetAside[] = [];
  const read = new Set<number>();
  for (const { piece, feature, ordinal, mark } of places) {
    const cell = cells.byKey.get(cellKey(piece.id, feature.id));
    if (cell === undefined || cell.readings.length === 0) continue;
    read.add(ordinal);
    const offPm = asDepartures ? feature.nominalPm : 0;
    const at = { piece, feature, ordinal, mark, cell, earlier: ordinal <= lastFresh };
    const { size } = cell;
    if (size !== null) {
      points.push({ ...at, size, valuePm: size.valuePm - offPm });
      continue;
    }
    const struck = cell.readings.findLast(({ state }) => state === 'struck');
    if (struck === undefined || counted(cell.readings).length > 0) continue;
    if (cell.readings.some(({ state }) => state === 'held')) continue;
    aside.push({ ...at, valuePm: struck.valuePm - offPm, reason: struck.reason });
  }
  return { points, aside, read };
}

function driftOf(
  points: readonly RunPoint[],
  freshAfter: readonly number[],
  limits: Limits,
  nominalPm: number,
): Drift | null {
  if (points.length === 0) return null;
  const ordinals = points.map((point) => point.ordinal);
  const eventsBefore = [...new Set(freshAfter)].flatMap((after) => {
    const index = ordinals.findIndex((ordinal) => ordinal > after);
    return index > 0 ? [index] : [];
  });
  const offMm = (pm: number) => (pm - nominalPm) / picoPerMilli;
  if (Math.max(0, ...freshAfter) >= ordinals.at(-1)!) return null;
  return driftSinceEvent({
    ordinals,
    sizesMm: points.map((point) => offMm(point.valuePm)),
    ...(limits.lowerPm === null ? {} : { lowerMm: offMm(limits.lowerPm) }),
    ...(limits.upperPm === null ? {} : { upperMm: offMm(limits.upperPm) }),
    confidence,
    eventsBefore: eventsBefore.sort((a, b) => a - b),
  });
}

/**
 * Restarts near the far limit, inside it by three scatters of the pieces and the guard of one size, so
 * that the longest stretch fits before the next correction; whole divisions of the dial, never one more
 * than that. Nothing where the offset would go the way of the drift, or where the piece after it would
 * not come out between the limits (D26).
 */
function offsetAdvice(
  run: Run,
  at: {
    nominalPm: number;
    limits: Limits;
    drift: Drift & { kind: 'line' };
    side: 'lower' | 'upper';
    afterOrdinal: number;
    standardPm: number;
  },
): OffsetAdvice | NoOffset {
  const { nominalPm, limits, drift, afterOrdinal } = at;
  const { scatterMm, line } = drift;
  const grows = at.side === 'upper';
  const farPm = grows ? limits.lowerPm : limits.upperPm;
  if (farPm === null) return 'one limit';
  const marginPm = 3 * scatterMm * picoPerMilli + guardFactor * at.standardPm;
  const wanted = restartOffset({
    interceptMm: line.intercept,
    slopeMmPerPiece: line.slope,
    nextPiece: afterOrdinal + 1,
    restartAtMm: (farPm + (grows ? marginPm : -marginPm) - nominalPm) / picoPerMilli,
    dial: run.dial,
  });
  const divisions = Math.trunc((wanted.offsetOnDialMm * picoPerMilli) / run.divisionPm);
  if (divisions === 0) return 'less than a division';
  const onDialPm = divisions * run.divisionPm;
  const onDiameterPm = run.dial === 'radius' ? 2 * onDialPm : onDialPm;
  const restartPm = Math.round(nominalPm + wanted.expectedNextMm * picoPerMilli + onDiameterPm);
  const isAgainst = grows ? onDiameterPm < 0 : onDiameterPm > 0;
  const isBetween = restartPm > limits.lowerPm! && restartPm < limits.upperPm!;
  return isAgainst && isBetween ? { afterOrdinal, onDialPm, onDiameterPm, restartPm } : 'no room';
}
