import { MathsInputError } from '../check';

/**
 * Interference that is left after the peaks of both surfaces have been pressed
 * flat, mm on diameter, from 0 up.
 *
 * effective = interference - factor (Rz_hub + Rz_shaft). The factor is 0.8 in
 * DIN 7190 (2001) and 0.4 in DIN 7190-1 (2017): say which one was used. Rz in
 * micrometres. Source: [din-7190].
 *
 * @throws {MathsInputError} `smoothing-loss/surface`, `smoothing-loss/interference`
 *
 * @example
 * smoothingLoss(0.018, { hubRzUm: 6.3, shaftRzUm: 4, factor: 0.8 });
 * // lossMm 0.00824, effectiveMm 0.00976
 */
export function smoothingLoss(
  interferenceMm: number,
  surface: { hubRzUm: number; shaftRzUm: number; factor: number },
): { lossMm: number; effectiveMm: number } {
  const { hubRzUm, shaftRzUm, factor } = surface;
  if (![hubRzUm, shaftRzUm, factor].every((value) => value >= 0 && value < Infinity)) {
    throw new MathsInputError(
      'smoothing-loss/surface',
      `smoothingLoss requires roughness and factor from zero up, got ${hubRzUm}, ${shaftRzUm} and ${factor}`,
    );
  }
  if (!Number.isFinite(interferenceMm)) {
    throw new MathsInputError(
      'smoothing-loss/interference',
      `smoothingLoss requires a finite interference, got ${interferenceMm}`,
    );
  }
  const lossMm = (factor * (hubRzUm + shaftRzUm)) / 1000;
  return { lossMm, effectiveMm: Math.max(0, interferenceMm - lossMm) };
}
