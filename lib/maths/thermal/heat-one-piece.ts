import { MathsInputError } from '../check';
import type { MatingPiece } from './clearance-at-temperatures';
import { requireExpansion, requireLength, requireTemperature } from './check-thermal';

/** Whether, and at what temperature, a piece goes on. */
export type HeatOnePiece =
  | { kind: 'found'; temperatureC: number; changeC: number }
  /** Cooling would have to pass absolute zero. */
  | { kind: 'never-so-cold' };

/**
 * Temperature to which a hub is heated, or a shaft cooled, so that the two go
 * together with a working gap while the other piece stays where it is.
 *
 * Hub: B (1 + a (T - 20)) = S' + gap; shaft: S (1 + a (T - 20)) = B' - gap, with
 * the other piece at its own size S' or B' at its own temperature. `changeC` is
 * counted from that temperature. When the gap is there already the piece needs
 * no heat and the change says so by its sign.
 *
 * Lengths in mm, coefficients per degree C. Limits: constant coefficient, no
 * heat lost on the way. Heating and freezing hurt: gloves, no flame near oil,
 * air the room, and follow the maker's limit of temperature for the material.
 * Source: [iso-1].
 *
 * @throws {MathsInputError} `heat-one-piece/length`, `.../expansion`, `.../temperature`, `.../gap`
 *
 * @example
 * heatOnePiece({
 *   change: 'bore', gapMm: 0.03, otherC: 20,
 *   bore: { size20Mm: 50, expansionPerC: 11.5e-6 },
 *   shaft: { size20Mm: 50.045, expansionPerC: 11.5e-6 },
 * }); // temperatureC 150.43
 */
export function heatOnePiece(joint: {
  change: 'bore' | 'shaft';
  bore: MatingPiece;
  shaft: MatingPiece;
  gapMm: number;
  otherC: number;
}): HeatOnePiece {
  const { change, bore, shaft, gapMm, otherC } = joint;
  requireJoint(joint);
  const [piece, other] = change === 'bore' ? [bore, shaft] : [shaft, bore];
  const otherMm = other.size20Mm * (1 + other.expansionPerC * (otherC - 20));
  const wantedMm = change === 'bore' ? otherMm + gapMm : otherMm - gapMm;
  const temperatureC = 20 + (wantedMm / piece.size20Mm - 1) / piece.expansionPerC;
  if (temperatureC < -273.15) return { kind: 'never-so-cold' };
  return { kind: 'found', temperatureC, changeC: temperatureC - otherC };
}

function requireJoint(joint: Parameters<typeof heatOnePiece>[0]): void {
  const name = ['heat-one-piece', 'heatOnePiece'] as const;
  for (const piece of [joint.bore, joint.shaft]) {
    requireLength(...name, piece.size20Mm);
    requireExpansion(...name, piece.expansionPerC);
  }
  requireTemperature(...name, joint.otherC);
  const changing = joint.change === 'bore' ? joint.bore : joint.shaft;
  if (!(changing.expansionPerC > 0)) {
    throw new MathsInputError(
      'heat-one-piece/expansion',
      `heatOnePiece requires a piece that grows with heat, got ${changing.expansionPerC}`,
    );
  }
  if (!(Number.isFinite(joint.gapMm) && joint.gapMm >= 0)) {
    throw new MathsInputError(
      'heat-one-piece/gap',
      `heatOnePiece requires a working gap from zero up, got ${joint.gapMm}`,
    );
  }
}
