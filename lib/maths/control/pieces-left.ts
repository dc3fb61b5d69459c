import { studentTQuantile } from '../distributions/student-t-quantile';
import { refuse, requireConfidence, requireWhole } from './guards';
import type { Line } from './least-squares-line';
import { lineAt } from './line-at';
import { leverage } from './leverage';

export type PiecesLeftQuestion = {
  /** Ordinal of the last piece made, a whole number, not before the middle of the readings. */
  lastPiece: number;
  /** The limit the line heads for, in the units of the line. */
  limit: number;
  /** One-sided, for each single piece. */
  confidence: number;
};

export type PiecesLeft = {
  /** Last piece at which the line itself is still inside, which may be long past. */
  lastInsideByLine: number;
  /** Pieces after the last one for which the line itself is still inside. */
  byLine: number;
  /** Pieces after the last one each of which stays inside with the stated confidence. Act on this. */
  withConfidence: number;
};

/** Pieces by which a crossing may miss a whole piece through rounding alone; still counts as on it. */
const roundingPieces = 1e-9;

/**
 * How many more pieces can be made before a drifting size reaches its limit.
 *
 *     by the line:      floor(where the line meets the limit) - last piece
 *     with confidence:  largest j such that line + t_c s sqrt(1 + h) is inside at last + 1 ... last + j
 *
 * t_c is the one-sided point with n - 2. Exactly on the limit is inside. Neither count is below 0.
 * It is a statement about each piece, not about all of them together.
 *
 * Limits: the line must be no level one, and its drift should be told from scatter first
 * (`driftSinceEvent` does that). Counts stop at 2^53 - 1. Cost: O(log of the count).
 * Source: [draper-smith] for the prediction limit; the count is its definition.
 *
 * @throws {MathsInputError} `pieces-left/confidence`, `pieces-left/not-whole`,
 *   `pieces-left/not-finite`, `pieces-left/level-line`, `pieces-left/last-piece`
 *
 * @example
 * piecesLeft(line, { lastPiece: 12, limit: 12, confidence: 0.95 });
 * // { lastInsideByLine: 31, byLine: 19, withConfidence: 16 }
 */
export function piecesLeft(line: Line, question: PiecesLeftQuestion): PiecesLeft {
  const { lastPiece, limit, confidence } = question;
  requireConfidence('piecesLeft', confidence);
  requireWhole('piecesLeft', 'last piece', lastPiece, -Infinity, Infinity);
  if (!Number.isFinite(limit)) {
    throw refuse('piecesLeft', 'not-finite', `a finite limit, got ${limit}`);
  }
  if (line.slope === 0) throw refuse('piecesLeft', 'level-line', 'a line that drifts, got slope 0');
  if (lastPiece < line.meanX) {
    const range = `a last piece not before the middle of the readings ${line.meanX}`;
    throw refuse('piecesLeft', 'last-piece', `${range}, got ${lastPiece}`);
  }

  const meets = line.meanX + (limit - line.meanY) / line.slope;
  const lastInsideByLine = wholeAtOrBelow(meets);

  const towards = Math.sign(line.slope);
  const reach = studentTQuantile(confidence, line.degreesOfFreedom) * line.residualSd;
  const slack = roundingPieces * Math.abs(line.slope);
  const isInside = (ordinal: number) => {
    const worst = lineAt(line, ordinal) + towards * reach * Math.sqrt(1 + leverage(line, ordinal));
    return towards * (limit - worst) >= -slack;
  };
  return {
    lastInsideByLine,
    byLine: clamp(lastInsideByLine - lastPiece),
    withConfidence: countInside((ahead) => isInside(lastPiece + ahead)),
  };
}

function wholeAtOrBelow(x: number): number {
  const nearest = Math.round(x);
  return Math.abs(x - nearest) <= roundingPieces ? nearest : Math.floor(x);
}

/** Largest j with isInside(1) ... isInside(j), for a limit that once left is left for good. */
function countInside(isInside: (ahead: number) => boolean): number {
  if (!isInside(1)) return 0;
  let inside = 1;
  let outside = 2;
  while (isInside(outside)) {
    if (outside >= Number.MAX_SAFE_INTEGER / 2) return Number.MAX_SAFE_INTEGER;
    inside = outside;
    outside *= 2;
  }
  while (outside - inside > 1) {
    const middle = inside + Math.floor((outside - inside) / 2);
    if (isInside(middle)) inside = middle;
    else outside = middle;
  }
  return inside;
}

function clamp(count: number): number {
  return Math.min(Math.max(count, 0), Number.MAX_SAFE_INTEGER);
}
