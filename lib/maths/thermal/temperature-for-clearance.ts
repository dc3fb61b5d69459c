import { MathsInputError } from '../check';
import type { MatingPiece } from './clearance-at-temperatures';
import { requireExpansion, requireLength } from './check-thermal';

/** How a clearance goes with the temperature of both pieces. */
export type TemperatureForClearance =
  | {
      kind: 'found';
      temperatureC: number;
      clearancePerC: number;
      tighterWhen: 'hot' | 'cold';
    }
  /** The temperature that the straight line gives lies below absolute zero: there is none. */
  | { kind: 'never-so-cold'; clearancePerC: number; tighterWhen: 'hot' | 'cold' }
  /** Both pieces grow alike, so no temperature changes the clearance. */
  | { kind: 'unchanging' };

/**
 * The temperature, shared by a bore and a shaft, at which their clearance
 * becomes a wanted one; with 0 wanted, the point where they bind.
 *
 * T = 20 + (c - (B - S)) / (B aB - S aS). `clearancePerC` is that denominator,
 * mm per degree C: above zero the pair is tighter when cold.
 *
 * Two pieces are `unchanging` when their growth per degree agrees to a part in
 * 10^12. Lengths in mm, coefficients per degree C. Limits: constant coefficients,
 * so a temperature far from 20 degrees C is an estimate. Source: [iso-1].
 *
 * @throws {MathsInputError} `temperature-for-clearance/length`, `.../expansion`, `.../clearance`
 *
 * @example
 * temperatureForClearance({
 *   bore: { size20Mm: 25.01, expansionPerC: 23.1e-6 },
 *   shaft: { size20Mm: 24.99, expansionPerC: 11.5e-6 },
 *   clearanceMm: 0,
 * }); // temperatureC -48.88, tighterWhen 'cold'
 */
export function temperatureForClearance(wanted: {
  bore: MatingPiece;
  shaft: MatingPiece;
  clearanceMm: number;
}): TemperatureForClearance {
  const { bore, shaft, clearanceMm } = wanted;
  for (const piece of [bore, shaft]) {
    requireLength('temperature-for-clearance', 'temperatureForClearance', piece.size20Mm);
    requireExpansion('temperature-for-clearance', 'temperatureForClearance', piece.expansionPerC);
  }
  if (!Number.isFinite(clearanceMm)) {
    throw new MathsInputError(
      'temperature-for-clearance/clearance',
      `temperatureForClearance requires a finite clearance, got ${clearanceMm}`,
    );
  }
  const boreGrowth = bore.size20Mm * bore.expansionPerC;
  const shaftGrowth = shaft.size20Mm * shaft.expansionPerC;
  const clearancePerC = boreGrowth - shaftGrowth;
  if (Math.abs(clearancePerC) <= 1e-12 * Math.max(Math.abs(boreGrowth), Math.abs(shaftGrowth))) {
    return { kind: 'unchanging' };
  }
  const tighterWhen = clearancePerC > 0 ? 'cold' : 'hot';
  const temperatureC = 20 + (clearanceMm - (bore.size20Mm - shaft.size20Mm)) / clearancePerC;
  return temperatureC < -273.15
    ? { kind: 'never-so-cold', clearancePerC, tighterWhen }
    : { kind: 'found', temperatureC, clearancePerC, tighterWhen };
}
