import { driftSinceEvent, type Drift } from '@/lib/maths/control/drift-since-event';
import { restartOffset } from '@/lib/maths/control/restart-offset';
import type { Feature } from '@/lib/schema/feature';
import type { Piece } from '@/lib/schema/part';
import type { Run, RunEvent } from '@/lib/schema/run';
import { cellKey, type Cells } from './cells';
import { drawnLimits } from './feature-limits';
import type { Size } from './size';
import { guardFactor, type Limits } from './verdict';

/** One measured piece of a run, in the order made. */
export type RunPoint = {
  piece: Piece;
  size: Size;
  /** Made before the last event that starts the drift afresh. */
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
  feature: Feature;
  pieces: Piece[];
  points: RunPoint[];
  events: RunEvent[];
  limits: Limits;
  drift: Drift | null;
  /** The next piece to make; null when the batch is done. */
  nextPiece: Piece | null;
  /** How many more pieces may be made before acting; null when nothing drifts towards a limit. */
  piecesLeft: number | null;
  offset: OffsetAdvice | null;
};

/** Two-sided confidence of the band that is drawn and of where it meets the limit. */
const confidence = 0.95;

const picoPerMilli = 1e9;

/** Events after which the sizes before say nothing about the sizes after. */
const startsAfresh: ReadonlySet<RunEvent['kind']> = new Set([
  'insert changed',
  'offset moved',
  're-chucked',
]);

/**
 * A run as it stands: its pieces in the order made, the drift since the last event that starts it
 * afresh (insert changed, offset moved, re-chucked; a break or coolant only leaves a mark), and what
 * to do about it. Null while its feature is gone.
 */
export function runView(
  run: Run,
  feature: Feature | undefined,
  allPieces: readonly Piece[],
  allEvents: readonly RunEvent[],
  cells: Cells,
): RunView | null {
  if (feature === undefined) return null;
  const pieces = allPieces
    .filter((piece) => piece.partId === feature.partId && piece.struckAt === null)
    .sort((a, b) => a.ordinal - b.ordinal);
  const events = allEvents
    .filter((event) => event.runId === run.id && event.struckAt === null)
    .sort((a, b) => a.afterOrdinal - b.afterOrdinal || (a.at < b.at ? -1 : 1));
  const fresh = events.filter((event) => startsAfresh.has(event.kind)).map((e) => e.afterOrdinal);
  const lastFresh = Math.max(0, ...fresh);

  const points = pieces.flatMap((piece): RunPoint[] => {
    const size = cells.byKey.get(cellKey(piece.id, feature.id))?.size ?? null;
    return size === null ? [] : [{ piece, size, earlier: piece.ordinal <= lastFresh }];
  });
  const limits = drawnLimits(feature);
  const drift = driftOf(points, fresh, limits, feature.nominalPm);
  const lastMade = points.at(-1)?.piece.ordinal ?? 0;
  const ahead = drift?.kind === 'line' && drift.ahead.kind === 'meets' ? drift.ahead : null;
  // Up to where the drawn band meets the limit: the words and the picture say the same piece.
  const piecesLeft =
    ahead === null ? null : Math.max(0, Math.floor(ahead.crossing.first) - lastMade);
  return {
    run,
    feature,
    pieces,
    points,
    events,
    limits,
    drift,
    nextPiece: pieces.find((piece) => piece.ordinal > lastMade) ?? null,
    piecesLeft,
    offset: offsetAdvice(
      run,
      feature,
      limits,
      drift,
      lastMade,
      piecesLeft ?? 0,
      points.at(-1)?.size.standardPm ?? 0,
    ),
  };
}

function driftOf(
  points: readonly RunPoint[],
  freshAfter: readonly number[],
  limits: Limits,
  nominalPm: number,
): Drift | null {
  if (points.length === 0) return null;
  const ordinals = points.map((point) => point.piece.ordinal);
  const eventsBefore = [...new Set(freshAfter)].flatMap((after) => {
    const index = ordinals.findIndex((ordinal) => ordinal > after);
    return index > 0 ? [index] : [];
  });
  const offMm = (pm: number) => (pm - nominalPm) / picoPerMilli;
  if (Math.max(0, ...freshAfter) >= ordinals.at(-1)!) return null;
  return driftSinceEvent({
    ordinals,
    sizesMm: points.map((point) => offMm(point.size.valuePm)),
    ...(limits.lowerPm === null ? {} : { lowerMm: offMm(limits.lowerPm) }),
    ...(limits.upperPm === null ? {} : { upperMm: offMm(limits.upperPm) }),
    confidence,
    eventsBefore: eventsBefore.sort((a, b) => a - b),
  });
}

/**
 * Restarts near the far limit, inside it by three scatters of the pieces and the guard of one size, so
 * that the longest stretch fits before the next correction; whole divisions of the dial, never one more
 * than that.
 */
function offsetAdvice(
  run: Run,
  feature: Feature,
  limits: Limits,
  drift: Drift | null,
  lastMade: number,
  piecesLeft: number,
  standardPm: number,
): OffsetAdvice | null {
  if (drift?.kind !== 'line' || drift.ahead.kind !== 'meets') return null;
  const { ahead, scatterMm, line } = drift;
  const farPm = ahead.side === 'upper' ? limits.lowerPm : limits.upperPm;
  if (farPm === null) return null;
  const marginPm = 3 * scatterMm * picoPerMilli + guardFactor * standardPm;
  const restartPm = farPm + (ahead.side === 'upper' ? marginPm : -marginPm);
  const afterOrdinal = lastMade + piecesLeft;
  const wanted = restartOffset({
    interceptMm: line.intercept,
    slopeMmPerPiece: line.slope,
    nextPiece: afterOrdinal + 1,
    restartAtMm: (restartPm - feature.nominalPm) / picoPerMilli,
    dial: run.dial,
  });
  const divisions = Math.trunc((wanted.offsetOnDialMm * picoPerMilli) / run.divisionPm);
  if (divisions === 0) return null;
  const onDialPm = divisions * run.divisionPm;
  const onDiameterPm = run.dial === 'radius' ? 2 * onDialPm : onDialPm;
  return {
    afterOrdinal,
    onDialPm,
    onDiameterPm,
    restartPm: Math.round(feature.nominalPm + wanted.expectedNextMm * picoPerMilli + onDiameterPm),
  };
}
