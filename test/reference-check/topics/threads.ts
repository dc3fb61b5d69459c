import { baThread } from '@/lib/maths/thread/ba-thread';
import { baTolerances } from '@/lib/maths/thread/ba-tolerances';
import { blindHole } from '@/lib/maths/thread/blind-hole';
import { drillForEngagement } from '@/lib/maths/thread/drill-for-engagement';
import { isoExternalLimits, type DiameterLimits } from '@/lib/maths/thread/iso-external-limits';
import { isoInternalLimits } from '@/lib/maths/thread/iso-internal-limits';
import { isoMetricThread } from '@/lib/maths/thread/iso-metric-thread';
import { byPitch } from '@/lib/maths/thread/iso965-tables';
import { threadEngagement } from '@/lib/maths/thread/thread-engagement';
import { threeWires, wiresOver } from '@/lib/maths/thread/three-wires';
import { unifiedThread, type InchLimits } from '@/lib/maths/thread/unified-thread';
import { whitworthThread } from '@/lib/maths/thread/whitworth-thread';
import { isGiven } from './topic';

export const topic = 'Screw threads: basic sizes, limits, tapping drills, blind depth';

type Inputs = Record<string, number>;
type Answers = Record<string, unknown>;

export function answer(inputs: Record<string, unknown>): Answers {
  const kind = inputs.kind as string;
  const find = answers[kind];
  if (find === undefined) throw new Error(`no answer for kind ${kind}`);
  return find(inputs as Inputs, inputs);
}

const answers: Record<string, (numbers: Inputs, inputs: Record<string, unknown>) => Answers> = {
  iso_metric_basic: basic,
  iso_metric_limits: (_, inputs) => isoLimits(inputs),
  iso965_series: (_, inputs) => series(inputs.pitch_mm as number[]),
  unified_limits: unified,
  ba,
  ba_tolerances: baTolerated,
  whitworth_form: whitworth,
  engagement,
  drill_for_engagement: drill,
  blind_hole: blind,
  three_wires: wires,
};

function basic(inputs: Inputs): Answers {
  const thread = isoMetricThread(inputs.d_mm!, inputs.pitch_mm!);
  return {
    H: thread.heightMm,
    pitch_diameter_d2_D2: thread.pitchDiameterMm,
    minor_diameter_D1: thread.minorInternalMm,
    minor_diameter_d3: thread.minorExternalMm,
    stress_area_mm2: thread.stressAreaMm2,
  };
}

/** Of the external thread, of the internal one, or of both. */
function isoLimits(inputs: Record<string, unknown>): Answers {
  const [major, pitch] = [inputs.d_mm as number, inputs.pitch_mm as number];
  const falling = ({ maxMm, minMm }: DiameterLimits) => [maxMm, minMm];
  const rising = ({ maxMm, minMm }: DiameterLimits) => [minMm, maxMm];
  const limits: Answers = {};
  if (isGiven(inputs.external)) {
    const external = isoExternalLimits(major, pitch, inputs.external as string);
    limits.external = { major: falling(external.major), pitch: falling(external.pitch) };
  }
  if (isGiven(inputs.internal)) {
    const internal = isoInternalLimits(major, pitch, inputs.internal as string);
    limits.internal = {
      minor: rising(internal.minor),
      pitch: rising(internal.pitch),
      major_min: internal.majorMinMm,
    };
  }
  return limits;
}

function series(pitches: number[]): Answers {
  const rows = pitches.map((pitch) => byPitch.find((row) => row.pitchMm === pitch)!);
  return {
    es_g_um: rows.map((row) => -row.gUm),
    es_f_um: rows.map((row) => -row.fUm),
    es_e_um: rows.map((row) => (row.eUm === undefined ? null : -row.eUm)),
    EI_G_um: rows.map((row) => row.gUm),
    Td_6_um: rows.map((row) => row.majorUm),
    TD1_6_um: rows.map((row) => row.minorUm),
  };
}

function unified(numbers: Inputs, inputs: Record<string, unknown>): Answers {
  const isCoarseOrFine = /\bUN[CF]\b/.test(String(inputs.designation));
  const thread = {
    majorIn: numbers.major_in!,
    tpi: numbers.tpi!,
    series: isCoarseOrFine ? 'UNC' : 'other',
  } as const;
  const found = unifiedThread(thread);
  const falling = ({ maxIn, minIn }: InchLimits) => [maxIn, minIn];
  const rising = ({ maxIn, minIn }: InchLimits) => [minIn, maxIn];
  const external = (['1A', '2A', '3A'] as const).flatMap((externalClass) => {
    const { major, pitch } = unifiedThread({ ...thread, externalClass }).external;
    return [
      [`${externalClass}_major`, falling(major)],
      [`${externalClass}_pitch`, falling(pitch)],
    ];
  });
  const internal = (['1B', '2B', '3B'] as const).flatMap((internalClass) => {
    const { minor, pitch } = unifiedThread({ ...thread, internalClass }).internal;
    return [
      [`${internalClass}_pitch`, rising(pitch)],
      ...(minor === undefined ? [] : [[`${internalClass}_minor`, rising(minor)]]),
    ];
  });
  const limits = [...external, ...internal] as [string, number[]][];
  return {
    pitch_tolerance_2A_in: found.pitchTolerance2AIn,
    allowance_in: found.allowanceIn,
    allowance: found.allowanceIn,
    basic_pitch_in: found.basicPitchDiameterIn,
    basic_minor_D1_in: found.basicMinorIn,
    ...Object.fromEntries(limits),
    ...Object.fromEntries(limits.map(([name, value]) => [`${name}_in`, value])),
  };
}

function ba(inputs: Inputs): Answers {
  const thread = baThread(inputs.number!);
  return {
    pitch_mm: thread.pitchMm,
    major_mm: thread.majorMm,
    depth_mm: thread.depthMm,
    effective_mm: thread.effectiveMm,
    minor_mm: thread.minorMm,
    flank_angle_deg: thread.flankAngleDeg,
  };
}

function baTolerated(inputs: Inputs): Answers {
  const { externalClose, externalNormal, internal } = baTolerances(inputs.number!);
  return {
    external_close_major_tol: externalClose.majorMm,
    external_normal_major_tol: externalNormal.majorMm,
    external_close_minor_tol: externalClose.minorMm,
    external_normal_minor_tol: externalNormal.minorMm,
    internal_effective_tol: internal.effectiveMm,
    internal_minor_tol: internal.minorMm,
  };
}

function whitworth(inputs: Inputs): Answers {
  const thread = whitworthThread(inputs.major_in!, inputs.tpi!);
  return {
    pitch_in: thread.pitchIn,
    depth_in: thread.depthIn,
    effective_in: thread.effectiveIn,
    core_in: thread.coreIn,
    radius_in: thread.radiusIn,
  };
}

function engagement(numbers: Inputs, inputs: Record<string, unknown>): Answers {
  const found = (inputs.drills as number[]).map((size) =>
    threadEngagement({ major: numbers.major!, pitch: numbers.pitch!, drill: size }),
  );
  const american = found.map((one) => one.americanPercent);
  return {
    percent_5H8: found.map((one) => one.basicPercent),
    percent_3H4: american,
    percent: american,
  };
}

function drill(inputs: Inputs): Answers {
  const { exactMm, up, down } = drillForEngagement({
    majorMm: inputs.major_mm!,
    pitchMm: inputs.pitch_mm!,
    percent: inputs.percent_5H8!,
    rackStepMm: inputs.stock_step_mm!,
  });
  return {
    drill_exact_mm: exactMm,
    next_stock_up_mm: up.drillMm,
    percent_up: up.percent,
    next_stock_down_mm: down.drillMm,
    percent_down: down.percent,
  };
}

function blind(inputs: Inputs): Answers {
  const hole = blindHole({
    drillMm: inputs.drill_mm!,
    pitchMm: inputs.pitch_mm!,
    fullThreadMm: inputs.full_thread_mm!,
    runoutPitches: inputs.runout_pitches!,
    pointAngleDeg: inputs.point_angle_deg!,
    stockMm: inputs.stock_thickness_mm!,
    leastWallMm: inputs.least_wall_mm!,
  });
  return {
    point_length_mm: hole.pointMm,
    full_diameter_depth_mm: hole.fullDiameterDepthMm,
    total_depth_mm: hole.totalDepthMm,
    wall_left_mm: hole.wallLeftMm,
    ok: hole.wallIsEnough,
    deepest_full_thread_mm: hole.deepestFullThreadMm,
  };
}

function wires(inputs: Inputs): Answers {
  const [pitchMm, wireMm] = [inputs.pitch_mm!, inputs.wire_mm!];
  const overWiresMm = inputs.measured_over_wires_mm!;
  const found = threeWires({ pitchMm, wireMm, overWiresMm });
  const basicMm = isoMetricThread(inputs.major_mm!, pitchMm).pitchDiameterMm;
  return {
    best_wire_mm: found.bestWireMm,
    over_wires_at_basic_pitch_diameter_mm: basicMm + wiresOver(pitchMm, wireMm),
    pitch_diameter_mm: found.pitchDiameterMm,
  };
}
