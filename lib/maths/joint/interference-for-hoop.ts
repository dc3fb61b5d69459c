import { MathsInputError } from '../check';
import { compliance, requireJoint, type PressJoint } from './press-fit';

/**
 * The interference, mm on diameter, and the pressure at which the hoop stress of
 * the hub bore reaches a limit.
 *
 * p = limit (D^2 - d^2)/(D^2 + d^2); delta = p d (Kh + Ks) as in pressFit.
 *
 * Limits: as pressFit. The limit is the reader's own, from the maker's data; a
 * figure here is no permission. Source: [lame-timoshenko].
 *
 * @throws {MathsInputError} `interference-for-hoop/limit`, `.../diameter`, `.../material`
 *
 * @example
 * interferenceForHoop(joint, 170); // pressureMPa 102, interferenceMm 0.03961
 */
export function interferenceForHoop(
  joint: PressJoint,
  hoopLimitMPa: number,
): { pressureMPa: number; interferenceMm: number } {
  requireJoint('interference-for-hoop', 'interferenceForHoop', joint);
  if (!(hoopLimitMPa >= 0 && hoopLimitMPa < Infinity)) {
    throw new MathsInputError(
      'interference-for-hoop/limit',
      `interferenceForHoop requires a limit from zero up, got ${hoopLimitMPa}`,
    );
  }
  const { seatMm: d, hubOutsideMm: D } = joint;
  const pressureMPa = (hoopLimitMPa * (D * D - d * d)) / (D * D + d * d);
  return { pressureMPa, interferenceMm: pressureMPa * d * compliance(joint) };
}
