import { refuse } from '../control/guards';
import { leastSquaresLine, type Line } from '../control/least-squares-line';
import { leverage } from '../control/leverage';
import { lineAt } from '../control/line-at';

export type CalibrationLine = {
  line: Line;
  /** Correction at the reference point, and its growth per unit. */
  atReference: number;
  slope: number;
  /** Standard uncertainties of the two, and their correlation. */
  uAtReference: number;
  uSlope: number;
  correlation: number;
  /** Scatter of the observed corrections about the line. */
  scatter: number;
  /** Where the correction is known best. */
  bestKnownAt: number;
  /** Correction predicted at any point, with its standard uncertainty. */
  correctionAt: (at: number) => { correction: number; u: number };
};

/**
 * Calibration line of corrections observed at several points, about a chosen reference point.
 *
 *     b(t) = y1 + y2 (t - t0),  u^2(b(t)) = u1^2 + (t - t0)^2 u2^2 + 2 (t - t0) u1 u2 r
 *
 * The uncertainty of a prediction is worked in the middle of the points, s sqrt(1/n + (t - tb)^2/Sxx),
 * which is the same and does not cancel.
 *
 * Limits: only the line's own doubt; the gauge's scatter in use and the doubt of the reference are to be
 * added. Cost: O(n). Source: [jcgm-100] H.3.
 *
 * @throws {MathsInputError} `calibration-line/not-finite`, `least-squares-line/too-few`,
 *   `least-squares-line/lengths`, `least-squares-line/not-finite`, `least-squares-line/one-x`,
 *   `line-at/not-finite`
 *
 * @example
 * calibrationLine([21, 23, 25], [-0.17, -0.16, -0.16], 20).correctionAt(30); // ~ { correction: -0.145, ... }
 */
export function calibrationLine(
  points: readonly number[],
  corrections: readonly number[],
  reference: number,
): CalibrationLine {
  if (!Number.isFinite(reference)) {
    throw refuse('calibrationLine', 'not-finite', `a finite reference point, got ${reference}`);
  }
  const line = leastSquaresLine(points, corrections);
  const { residualSd, sumSquaresX, count, meanX } = line;
  const uAt = (at: number) => residualSd * Math.sqrt(leverage(line, at));
  const below = reference - meanX;
  return {
    line,
    atReference: lineAt(line, reference),
    slope: line.slope,
    uAtReference: uAt(reference),
    uSlope: line.slopeSe,
    correlation: below / Math.sqrt(sumSquaresX / count + below ** 2),
    scatter: residualSd,
    bestKnownAt: meanX,
    correctionAt: (at) => ({ correction: lineAt(line, at), u: uAt(at) }),
  };
}
