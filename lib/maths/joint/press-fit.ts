import { MathsInputError } from '../check';

/** A shaft pressed into a hub of the same length; diameters in mm at 20 degrees C. */
export type PressJoint = {
  seatMm: number;
  hubOutsideMm: number;
  /** 0 for a solid shaft. */
  shaftBoreMm: number;
  hub: Material;
  shaft: Material;
};

export type Material = { youngMPa: number; poisson: number };

export type PressFit = {
  pressureMPa: number;
  /** Hoop stresses, tension above zero. */
  hubHoopAtBoreMPa: number;
  hubHoopOutsideMPa: number;
  shaftHoopAtSeatMPa: number;
  /** Von Mises stress at the hub bore, where it is greatest: what is compared with yield. */
  hubEquivalentMPa: number;
  hubOutsideGrowsMm: number;
  /** Only of a hollow shaft: hoop stress at its bore, and how much the bore closes. */
  hollow?: { shaftHoopAtBoreMPa: number; boreClosesMm: number };
  /** Only when length and friction are given. */
  grip?: { axialForceN: number; torqueNm: number };
};

/**
 * Pressure, stresses, growth and grip of a press or shrink fit.
 *
 * Lame, plane stress: p = delta / (d (Kh + Ks)),
 * Kh = ((D^2 + d^2)/(D^2 - d^2) + nu_h)/E_h, Ks = ((d^2 + i^2)/(d^2 - i^2) - nu_s)/E_s.
 * Interference and all changes of size are on diameter, mm; stresses in MPa.
 * Without an interference there is no pressure, and every figure is 0.
 *
 * Limits: elastic and equal lengths; speed, heat in service, longer hubs and
 * shoulders are left out. A calculated pressure is no permission: pressing and
 * shrinking hurt people, so follow local codes, the maker's data and licensed
 * practice. Any one system of units that fits together gives the same figures
 * (inch, psi), but then the grip is in its own units and the torque is a thousandth.
 *
 * Source: [lame-timoshenko], [shigley-9] eq. 3-56.
 *
 * @throws {MathsInputError} `press-fit/diameter`, `press-fit/material`,
 *   `press-fit/interference`, `press-fit/grip`
 *
 * @example
 * pressFit(joint, 0.03, { lengthMm: 35, friction: 0.12 }).pressureMPa; // 77.25
 */
export function pressFit(
  joint: PressJoint,
  interferenceMm: number,
  grip?: { lengthMm: number; friction: number },
): PressFit {
  requireJoint('press-fit', 'pressFit', joint);
  if (!Number.isFinite(interferenceMm)) {
    throw new MathsInputError(
      'press-fit/interference',
      `pressFit requires a finite interference, got ${interferenceMm}`,
    );
  }
  const { seatMm: d, hubOutsideMm: D, shaftBoreMm: i } = joint;
  const pressureMPa = Math.max(0, interferenceMm) / (d * compliance(joint));
  const hubHoopAtBoreMPa = (pressureMPa * (D * D + d * d)) / (D * D - d * d);
  const found: PressFit = {
    pressureMPa,
    hubHoopAtBoreMPa,
    hubHoopOutsideMPa: (2 * pressureMPa * d * d) / (D * D - d * d),
    shaftHoopAtSeatMPa: 0 - (pressureMPa * (d * d + i * i)) / (d * d - i * i),
    hubEquivalentMPa: Math.sqrt(
      hubHoopAtBoreMPa ** 2 + hubHoopAtBoreMPa * pressureMPa + pressureMPa ** 2,
    ),
    hubOutsideGrowsMm: (2 * pressureMPa * d * d * D) / (joint.hub.youngMPa * (D * D - d * d)),
  };
  if (i > 0) {
    found.hollow = {
      shaftHoopAtBoreMPa: 0 - (2 * pressureMPa * d * d) / (d * d - i * i),
      boreClosesMm: (2 * pressureMPa * d * d * i) / (joint.shaft.youngMPa * (d * d - i * i)),
    };
  }
  if (grip !== undefined) found.grip = gripOf(d, pressureMPa, grip);
  return found;
}

/** Interference over d for each unit of pressure: Kh + Ks. */
export function compliance({
  seatMm: d,
  hubOutsideMm: D,
  shaftBoreMm: i,
  ...of
}: PressJoint): number {
  const hub = ((D * D + d * d) / (D * D - d * d) + of.hub.poisson) / of.hub.youngMPa;
  const shaft = ((d * d + i * i) / (d * d - i * i) - of.shaft.poisson) / of.shaft.youngMPa;
  return hub + shaft;
}

function gripOf(
  seatMm: number,
  pressureMPa: number,
  { lengthMm, friction }: { lengthMm: number; friction: number },
): { axialForceN: number; torqueNm: number } {
  if (!(lengthMm > 0 && lengthMm < Infinity && friction >= 0 && friction < Infinity)) {
    throw new MathsInputError(
      'press-fit/grip',
      `pressFit requires a length above zero and friction from zero up, got ${lengthMm} and ${friction}`,
    );
  }
  const axialForceN = Math.PI * seatMm * lengthMm * pressureMPa * friction;
  return { axialForceN, torqueNm: (axialForceN * seatMm) / 2000 };
}

/** Refuses diameters out of order and materials that are none. */
export function requireJoint(file: string, caller: string, joint: PressJoint): void {
  const { seatMm, hubOutsideMm, shaftBoreMm, hub, shaft } = joint;
  const ordered = 0 <= shaftBoreMm && shaftBoreMm < seatMm && seatMm < hubOutsideMm;
  if (!ordered || !Number.isFinite(hubOutsideMm)) {
    throw new MathsInputError(
      `${file}/diameter`,
      `${caller} requires shaft bore < seat < hub outside, got ${shaftBoreMm}, ${seatMm} and ${hubOutsideMm}`,
    );
  }
  for (const { youngMPa, poisson } of [hub, shaft]) {
    if (youngMPa > 0 && youngMPa < Infinity && poisson >= 0 && poisson <= 0.5) continue;
    throw new MathsInputError(
      `${file}/material`,
      `${caller} requires a modulus above zero and a Poisson ratio from 0 to 0.5, got ${youngMPa} and ${poisson}`,
    );
  }
}
