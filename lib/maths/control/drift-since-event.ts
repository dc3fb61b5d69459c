import { refuse, requireConfidence, requireEvents, requireFinite, requireLimits } from './guards';
import type { Interval } from './interval';
import { inversePrediction } from './inverse-prediction';
import { leastSquaresLine, type Line } from './least-squares-line';
import { lineBand, type BandAt } from './line-band';
import { piecesLeft } from './pieces-left';
import { slopeInterval } from './slope-interval';

export type DriftInput = {
  /** Place of each measured piece in the run, whole and increasing; gaps are pieces not measured. */
  ordinals: readonly number[];
  /** Their sizes, mm, all off the same nominal. As many as the ordinals. */
  sizesMm: readonly number[];
  /** Limits off the same nominal, mm. Leave one out where the drawing has only the other. */
  lowerMm?: number;
  upperMm?: number;
  /** For the slope, the bands and the crossing (two-sided) and for the pieces left (one-sided). */
  confidence: number;
  /**
   * Index (from 0) of each size made just after an event: insert turned, offset moved. Only the
   * pieces from the last of them on are looked at.
   */
  eventsBefore?: readonly number[];
};

export type DriftLine = {
  kind: 'line';
  line: Line;
  /** Index of the first size since the last event, and how many there are. */
  firstIndex: number;
  pieces: number;
  slopeMmPerPiece: number;
  slopeIntervalMmPerPiece: Interval;
  /** Standard deviation of single pieces about the line, mm. */
  scatterMm: number;
  /** t^2 se^2 / slope^2: below 1 the drift can be told from scatter. Infinity for a level line. */
  g: number;
  /** Line and both bands at an ordinal, mm off the nominal. */
  bandAtMm: (ordinal: number) => BandAt;
  ahead: DriftAhead;
};

export type DriftAhead =
  /** No drift that can be told from scatter: no count may be given. */
  | { kind: 'no-drift'; limitMm?: number }
  /** Drifts, but towards a side that has no limit. */
  | { kind: 'no-limit' }
  | {
      kind: 'meets';
      limitMm: number;
      side: 'lower' | 'upper';
      /** Where the drawn band of single pieces meets the limit, as ordinals with fractions. */
      crossing: Crossing;
      /** The same for the line alone, without the scatter of a single piece; narrower. */
      lineCrossing: Crossing;
      /** Last piece at which the line is still inside; below the last one made if it has passed. */
      lastPieceLineInside: number;
      piecesLeftByLine: number;
      /** The count to act on. */
      piecesLeftWithConfidence: number;
    };

export type Crossing = { first: number; best: number; last: number };

export type Drift =
  | DriftLine
  /** Points and limits only: too little to draw a line through. */
  | {
      kind: 'too-little';
      reason: 'too-few-pieces' | 'too-few-sizes';
      firstIndex: number;
      pieces: number;
    };

/** A line wants five pieces and three different sizes: common practice, no source. */
const leastPieces = 5;
const leastSizes = 3;

/**
 * Drift of a run since its last event: everything a run chart draws and says.
 *
 * A straight line through the sizes, its scatter and slope, the bands about it, where it meets the
 * limit ahead (upper if it grows, lower if it shrinks) and how many more pieces stay inside. When the
 * slope cannot be told from scatter (g of 1 or more, see `inversePrediction`) it says so and counts
 * nothing.
 *
 * Limits: a straight drift with steady normal scatter. A piece count is per piece, not for all of
 * them together; a chipped edge is not foreseen. Fewer than five pieces or three different sizes is
 * an answer (`too-little`), not an error. Cost: O(n). Sources: [draper-smith], [fieller-1954].
 *
 * @throws {MathsInputError} `drift-since-event/lengths`, `drift-since-event/not-finite`,
 *   `drift-since-event/ordinals`, `drift-since-event/limits`, `drift-since-event/confidence`,
 *   `drift-since-event/events`
 *
 * @example
 * driftSinceEvent({
 *   ordinals: [5, 6, 7, 8, 9, 10, 11],
 *   sizesMm: [-0.021, -0.020, -0.017, -0.016, -0.014, -0.011, -0.010],
 *   lowerMm: -0.027, upperMm: 0, confidence: 0.95,
 * });
 * // slopeMmPerPiece ~ 0.0019, scatterMm ~ 0.0006, ahead.crossing ~ { first: 14.8, best: 16.1, last: 17.7 }
 */
export function driftSinceEvent(input: DriftInput): Drift {
  requireRun(input);
  const firstIndex = Math.max(0, ...(input.eventsBefore ?? []));
  const ordinals = input.ordinals.slice(firstIndex);
  const sizesMm = input.sizesMm.slice(firstIndex);
  const pieces = ordinals.length;
  if (pieces < leastPieces) {
    return { kind: 'too-little', reason: 'too-few-pieces', firstIndex, pieces };
  }
  if (new Set(sizesMm).size < leastSizes) {
    return { kind: 'too-little', reason: 'too-few-sizes', firstIndex, pieces };
  }
  const { confidence } = input;
  const line = leastSquaresLine(ordinals, sizesMm);
  const upward = line.slope > 0;
  const level = line.slope === 0;
  const limitMm = level ? undefined : upward ? input.upperMm : input.lowerMm;
  const asked = { y: limitMm ?? line.meanY, confidence };
  const single = inversePrediction(line, { ...asked, of: 1 });
  return {
    kind: 'line',
    line,
    firstIndex,
    pieces,
    slopeMmPerPiece: line.slope,
    slopeIntervalMmPerPiece: slopeInterval(line, confidence),
    scatterMm: line.residualSd,
    g: single.g,
    bandAtMm: (ordinal) => lineBand(line, ordinal, confidence),
    ahead: whatIsAhead(),
  };

  function whatIsAhead(): DriftAhead {
    const own = inversePrediction(line, { ...asked, of: 'line' });
    if (!single.found || !own.found) {
      return limitMm === undefined ? { kind: 'no-drift' } : { kind: 'no-drift', limitMm };
    }
    if (limitMm === undefined) return { kind: 'no-limit' };
    const lastPiece = ordinals.at(-1)!;
    const left = piecesLeft(line, { lastPiece, limit: limitMm, confidence });
    return {
      kind: 'meets',
      limitMm,
      side: upward ? 'upper' : 'lower',
      crossing: { first: single.low, best: single.x, last: single.high },
      lineCrossing: { first: own.low, best: own.x, last: own.high },
      lastPieceLineInside: left.lastInsideByLine,
      piecesLeftByLine: left.byLine,
      piecesLeftWithConfidence: left.withConfidence,
    };
  }
}

function requireRun(input: DriftInput): void {
  const caller = 'driftSinceEvent';
  const { ordinals, sizesMm, lowerMm, upperMm, confidence, eventsBefore = [] } = input;
  if (sizesMm.length !== ordinals.length) {
    const got = `${ordinals.length} and ${sizesMm.length}`;
    throw refuse(caller, 'lengths', `one size for each ordinal, got ${got}`);
  }
  requireFinite(caller, 'sizes', sizesMm);
  ordinals.forEach((ordinal, i) => {
    const above = i === 0 || ordinal > ordinals[i - 1]!;
    if (!(Number.isSafeInteger(ordinal) && above)) {
      throw refuse(caller, 'ordinals', `whole increasing ordinals, got ${ordinal} at index ${i}`);
    }
  });
  if (lowerMm !== undefined) requireFinite(caller, 'limits', [lowerMm]);
  if (upperMm !== undefined) requireFinite(caller, 'limits', [upperMm]);
  if (lowerMm !== undefined && upperMm !== undefined) requireLimits(caller, lowerMm, upperMm);
  requireConfidence(caller, confidence);
  requireEvents(caller, eventsBefore, ordinals.length);
}
