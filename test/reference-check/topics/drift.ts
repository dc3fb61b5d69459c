import { driftSinceEvent } from '@/lib/maths/control/drift-since-event';
import type { Interval } from '@/lib/maths/control/interval';
import { inversePrediction } from '@/lib/maths/control/inverse-prediction';
import { leastSquaresLine } from '@/lib/maths/control/least-squares-line';
import { lineBand } from '@/lib/maths/control/line-band';
import { piecesLeft } from '@/lib/maths/control/pieces-left';
import { restartOffset } from '@/lib/maths/control/restart-offset';
import { slopeInterval } from '@/lib/maths/control/slope-interval';
import { studentTQuantile } from '@/lib/maths/distributions/student-t-quantile';

export const topic =
  'Drift along a run: regression, prediction, inverse prediction, pieces left, offset';

type Regression = {
  x: number[];
  y: number[];
  confidence: number;
  x0?: number | number[];
  y0?: number | number[];
  /** How many new readings `fieller_single` is the mean of. */
  m?: number;
};
type Run = {
  piece: number[];
  size: number[];
  limits: [number | null, number | null];
  confidence: number;
};
type Offset = {
  intercept: number;
  slope: number;
  next_piece: number;
  restart_at: number;
  dial: 'diameter' | 'radius';
};

export function answer(inputs: Record<string, unknown>): Record<string, unknown> {
  if (inputs.kind === 'regression') return regression(inputs as Regression);
  if (inputs.kind === 'drift') return drift(inputs as Run);
  return offset(inputs as Offset);
}

function regression({
  x,
  y,
  confidence,
  x0 = [],
  y0 = [],
  m = 1,
}: Regression): Record<string, unknown> {
  const line = leastSquaresLine(x, y);
  const at = [x0].flat().map((where) => {
    const band = lineBand(line, where, confidence);
    return {
      x0: where,
      fit: band.line,
      mean_interval: ends(band.meanLine),
      prediction_interval: ends(band.newReading),
    };
  });
  const inverse = [y0].flat().map((height) => {
    const single = inversePrediction(line, { y: height, confidence, of: m });
    const mean = inversePrediction(line, { y: height, confidence, of: 'line' });
    if (!single.found || !mean.found) return { y0: height, g: single.g };
    return {
      y0: height,
      x: single.x,
      approx_se: single.approxSe,
      fieller_single: [single.low, single.high],
      fieller_mean_line: [mean.low, mean.high],
      g: single.g,
    };
  });
  return {
    n: line.count,
    intercept: line.intercept,
    slope: line.slope,
    residual_sd: line.residualSd,
    s2: line.residualSd ** 2,
    se_slope: line.slopeSe,
    se_intercept: line.interceptSe,
    slope_interval: ends(slopeInterval(line, confidence)),
    t: studentTQuantile((1 + confidence) / 2, line.degreesOfFreedom),
    g: inverse[0]?.g,
    at,
    inverse,
    ...Object.fromEntries(
      at.flatMap((one) => [
        [`fit_at_${one.x0}`, one.fit],
        [`prediction_interval_at_${one.x0}`, one.prediction_interval],
      ]),
    ),
    ...Object.fromEntries(inverse.map((one) => [`x_at_${one.y0}`, one.x])),
  };
}

function drift({ piece, size, limits, confidence }: Run): Record<string, unknown> {
  const [lowerMm, upperMm] = limits;
  const found = driftSinceEvent({
    ordinals: piece,
    sizesMm: size,
    ...(lowerMm !== null && { lowerMm }),
    ...(upperMm !== null && { upperMm }),
    confidence,
  });
  if (found.kind === 'too-little') {
    return piece.length < 3 ? { reason: found.reason } : short({ piece, size, limits, confidence });
  }
  const { line, ahead } = found;
  const common = {
    slope: found.slopeMmPerPiece,
    intercept: line.intercept,
    residual_sd: found.scatterMm,
    slope_interval: ends(found.slopeIntervalMmPerPiece),
    drift_is_real: ahead.kind !== 'no-drift',
  };
  if (ahead.kind === 'no-limit') return common;
  if (ahead.kind === 'no-drift') return { ...common, limit_ahead: ahead.limitMm ?? null };
  return {
    ...common,
    limit_ahead: ahead.limitMm,
    line_meets_limit_at: ahead.crossing.best,
    last_piece_with_line_inside: ahead.lastPieceLineInside,
    pieces_left_by_line: ahead.piecesLeftByLine,
    pieces_left_with_confidence: ahead.piecesLeftWithConfidence,
    crossing_interval_mean_line: [ahead.lineCrossing.first, ahead.lineCrossing.last],
  };
}

/** Three or four pieces: fewer than the library draws a line through, but FORMULAS.md 14 does. */
function short({ piece, size, limits, confidence }: Run): Record<string, unknown> {
  const line = leastSquaresLine(piece, size);
  const limit = line.slope > 0 ? limits[1] : limits[0];
  const question = { y: limit ?? line.meanY, confidence };
  const own = inversePrediction(line, { ...question, of: 'line' });
  const common = {
    slope: line.slope,
    intercept: line.intercept,
    residual_sd: line.residualSd,
    slope_interval: ends(slopeInterval(line, confidence)),
    drift_is_real: own.found,
    limit_ahead: limit,
  };
  if (!own.found || limit === null) return common;
  const left = piecesLeft(line, { lastPiece: piece.at(-1)!, limit, confidence });
  return {
    ...common,
    line_meets_limit_at: own.x,
    last_piece_with_line_inside: left.lastInsideByLine,
    pieces_left_by_line: left.byLine,
    pieces_left_with_confidence: left.withConfidence,
    crossing_interval_mean_line: [own.low, own.high],
  };
}

function offset(inputs: Offset): Record<string, unknown> {
  const found = restartOffset({
    interceptMm: inputs.intercept,
    slopeMmPerPiece: inputs.slope,
    nextPiece: inputs.next_piece,
    restartAtMm: inputs.restart_at,
    dial: inputs.dial,
  });
  return {
    expected_next: found.expectedNextMm,
    offset_on_size: found.offsetOnSizeMm,
    offset_on_dial: found.offsetOnDialMm,
  };
}

function ends({ low, high }: Interval): [number, number] {
  return [low, high];
}
