import { refuse, requireFinite } from './guards';

export type RestartQuestion = {
  /** The drift line: size at ordinal 0 and growth per piece, mm. */
  interceptMm: number;
  slopeMmPerPiece: number;
  /** Ordinal of the piece that is made next, and the size it should restart at, mm. */
  nextPiece: number;
  restartAtMm: number;
  /** What one division of the machine's slide counts: the diameter, or the radius. */
  dial: 'diameter' | 'radius';
};

export type RestartOffset = {
  /** What the next piece would come out at with nothing done, mm. */
  expectedNextMm: number;
  /** Correction wanted on the size, mm; below zero makes a smaller size. */
  offsetOnSizeMm: number;
  /** The same on the dial: half of it on a radius slide, mm. */
  offsetOnDialMm: number;
};

/**
 * The offset that brings a drifting size back to where it should restart.
 *
 *     offset on size = restart - (intercept + slope next),  on a radius dial half of that
 *
 * The sign is that of the size, for an outside and an inside feature alike; which way the handle
 * turns is for the machine. Nothing is rounded to a division. Sizes may be taken off any nominal, so
 * long as both are. Cost: O(1). Source: definition.
 *
 * @throws {MathsInputError} `restart-offset/not-finite`, `restart-offset/dial`
 *
 * @example
 * restartOffset({
 *   interceptMm: 11.9901, slopeMmPerPiece: 0.00033, nextPiece: 13, restartAtMm: 11.987, dial: 'radius',
 * });
 * // expectedNextMm ~ 11.99439, offsetOnSizeMm ~ -0.00739, offsetOnDialMm ~ -0.003695
 */
export function restartOffset(question: RestartQuestion): RestartOffset {
  const { interceptMm, slopeMmPerPiece, nextPiece, restartAtMm, dial } = question;
  requireFinite('restartOffset', 'line, piece and size', [
    interceptMm,
    slopeMmPerPiece,
    nextPiece,
    restartAtMm,
  ]);
  if (dial !== 'diameter' && dial !== 'radius') {
    throw refuse('restartOffset', 'dial', `a dial of diameter or radius, got ${String(dial)}`);
  }
  const expectedNextMm = interceptMm + slopeMmPerPiece * nextPiece;
  const offsetOnSizeMm = restartAtMm - expectedNextMm;
  return {
    expectedNextMm,
    offsetOnSizeMm,
    offsetOnDialMm: dial === 'radius' ? offsetOnSizeMm / 2 : offsetOnSizeMm,
  };
}
