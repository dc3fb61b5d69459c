import { interferenceForHoop } from '@/lib/maths/joint/interference-for-hoop';
import { joiningTemperature } from '@/lib/maths/joint/joining-temperature';
import { pressFit, type PressJoint } from '@/lib/maths/joint/press-fit';
import { smoothingLoss } from '@/lib/maths/joint/smoothing-loss';

export const topic = 'Press and shrink fits (Lame), smoothing loss, joining temperature';

type Inputs = Record<string, number>;

export function answer(inputs: Record<string, unknown>): Record<string, unknown> {
  const numbers = inputs as Inputs;
  switch (inputs.kind) {
    case 'lame':
      return lame(numbers);
    case 'smoothing_loss':
      return smoothed(inputs);
    case 'joining_temperature':
      return { hub_C: heated(numbers) };
    case 'interference_for_hoop_limit':
      return hoopLimit(numbers);
    default:
      throw new Error(`no answer for kind ${String(inputs.kind)}`);
  }
}

function lame(inputs: Inputs): Record<string, unknown> {
  const joint: PressJoint = {
    seatMm: inputs.seat_diameter!,
    hubOutsideMm: inputs.hub_outside!,
    shaftBoreMm: inputs.shaft_bore!,
    hub: { youngMPa: inputs.E_hub_MPa!, poisson: inputs.nu_hub! },
    shaft: { youngMPa: inputs.E_shaft_MPa!, poisson: inputs.nu_shaft! },
  };
  const interference = inputs.diametral_interference!;
  const grip =
    inputs.length === undefined
      ? undefined
      : { lengthMm: inputs.length, friction: inputs.friction! };
  const found = pressFit(joint, interference, grip);
  const answers: Record<string, unknown> = {
    pressure_MPa: found.pressureMPa,
    hub_hoop_at_bore_MPa: found.hubHoopAtBoreMPa,
    hub_hoop_outside_MPa: found.hubHoopOutsideMPa,
    shaft_hoop_at_seat_MPa: found.shaftHoopAtSeatMPa,
    hub_outside_grows_by_on_diameter_mm: found.hubOutsideGrowsMm,
  };
  if (interference <= 0) answers.reason = 'no interference, no pressure';
  if (found.hollow !== undefined) {
    answers.shaft_hoop_at_bore_MPa = found.hollow.shaftHoopAtBoreMPa;
    answers.bore_closes_by_on_diameter_mm = found.hollow.boreClosesMm;
    answers.close_in_over_interference = found.hollow.boreClosesMm / interference;
  }
  if (found.grip !== undefined) {
    answers.axial_force_N = found.grip.axialForceN;
    answers.torque_Nm = found.grip.torqueNm;
  }
  return answers;
}

/** A solid shaft in a hub of the same material. */
function solidJoint(inputs: Inputs): PressJoint {
  const material = { youngMPa: inputs.E_MPa!, poisson: inputs.nu! };
  return {
    seatMm: inputs.seat_diameter!,
    hubOutsideMm: inputs.hub_outside!,
    shaftBoreMm: 0,
    hub: material,
    shaft: material,
  };
}

function smoothed(inputs: Record<string, unknown>): Record<string, unknown> {
  const numbers = inputs as Inputs;
  const [hubRzUm, shaftRzUm] = inputs.Rz_um_hub_shaft as [number, number];
  const surface = { hubRzUm, shaftRzUm, factor: numbers.factor! };
  const [least, most] = (inputs.interference_limits_mm as number[]).map((limit) => {
    const { effectiveMm, lossMm } = smoothingLoss(limit, surface);
    const grip = { lengthMm: numbers.length!, friction: numbers.friction! };
    const found = pressFit(solidJoint(numbers), effectiveMm, grip);
    return {
      effective_interference_mm: effectiveMm,
      pressure_MPa: found.pressureMPa,
      torque_Nm: found.grip!.torqueNm,
      lossMm,
    };
  });
  return { least, most, smoothing_loss_mm: least!.lossMm };
}

function heated(inputs: Inputs): number {
  return joiningTemperature({
    seatMm: inputs.seat_diameter!,
    interferenceMm: inputs.interference_mm!,
    gapMm: inputs.gap_mm!,
    expansionPerC: inputs.alpha_hub!,
    roomC: inputs.room_C!,
  });
}

function hoopLimit(inputs: Inputs): Record<string, unknown> {
  const found = interferenceForHoop(solidJoint(inputs), inputs.hoop_limit_MPa!);
  return { pressure_MPa: found.pressureMPa, diametral_interference_mm: found.interferenceMm };
}
