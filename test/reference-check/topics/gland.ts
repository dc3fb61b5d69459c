import { designPistonGland } from '@/lib/maths/seal/design-piston-gland';
import { faceGland } from '@/lib/maths/seal/face-gland';
import { pistonGland } from '@/lib/maths/seal/piston-gland';
import { pistonGlandRange } from '@/lib/maths/seal/piston-gland-range';
import { rodGland } from '@/lib/maths/seal/rod-gland';
import { softPacking } from '@/lib/maths/seal/soft-packing';
import type { GlandFault } from '@/lib/maths/seal/check-seal';

export const topic = 'O-ring and packing glands';

type Inputs = Record<string, number>;

export function answer(inputs: Record<string, unknown>): Record<string, unknown> {
  const numbers = inputs as Inputs;
  switch (inputs.kind) {
    case 'piston_gland':
      return piston(numbers);
    case 'rod_gland':
      return rod(numbers);
    case 'face_gland':
      return face(inputs);
    case 'design_piston_gland':
      return design(numbers);
    case 'worst_case':
      return worst(inputs as Record<string, [number, number]>);
    case 'soft_packing':
      return packing(numbers);
    default:
      throw new Error(`no answer for kind ${String(inputs.kind)}`);
  }
}

/** The set warns of a ring that is not squeezed. */
function warned(faults: readonly GlandFault[]): Record<string, string> {
  const gap = faults.find((fault) => fault.kind === 'no-squeeze');
  return gap === undefined ? {} : { warning: `no squeeze: the gland is ${gap.gapMm} mm too deep` };
}

function piston(inputs: Inputs): Record<string, unknown> {
  const found = pistonGland({
    boreMm: inputs.bore!,
    pistonMm: inputs.piston!,
    grooveBottomMm: inputs.groove_bottom!,
    grooveWidthMm: inputs.groove_width!,
    ringInsideMm: inputs.ring_inside!,
    ringSectionMm: inputs.ring_section!,
  });
  const { least, most } = found.squeezeEccentricPercent;
  return {
    gland_depth: found.depthMm,
    groove_depth_below_piston: found.grooveDepthMm,
    radial_gap: found.radialGapMm,
    squeeze_percent: found.squeezePercent,
    squeeze_eccentric_percent: [least, most],
    stretch_percent: found.stretchPercent,
    ring_section_area: found.ringAreaMm2,
    gland_area: found.glandAreaMm2,
    fill_percent: found.fillPercent,
    section_after_stretch_constant_volume: found.stretchedSectionMm,
    squeeze_after_stretch_percent: found.squeezeStretchedPercent,
    ...warned(found.faults),
  };
}

function rod(inputs: Inputs): Record<string, unknown> {
  const found = rodGland({
    rodMm: inputs.rod!,
    glandBoreMm: inputs.gland_bore!,
    grooveBottomMm: inputs.groove_bottom!,
    grooveWidthMm: inputs.groove_width!,
    ringInsideMm: inputs.ring_inside!,
    ringSectionMm: inputs.ring_section!,
  });
  return {
    gland_depth: found.depthMm,
    squeeze_percent: found.squeezePercent,
    radial_gap: found.radialGapMm,
    stretch_on_rod_percent: found.stretchOnRodPercent,
    outside_compression_percent: found.outsideCompressionPercent,
    fill_percent: found.fillPercent,
    ...warned(found.faults),
  };
}

function face(inputs: Record<string, unknown>): Record<string, unknown> {
  const numbers = inputs as Inputs;
  const half = (inputs.tolerance_half ?? {}) as Inputs;
  const found = faceGland({
    depthMm: numbers.depth!,
    grooveWidthMm: numbers.groove_width!,
    ringSectionMm: numbers.ring_section!,
    depthHalfToleranceMm: half.depth ?? 0,
    sectionHalfToleranceMm: half.section ?? 0,
  });
  const { least, most } = found.squeezeRangePercent;
  return {
    squeeze_percent: found.squeezePercent,
    squeeze_range_percent: [least, most],
    fill_percent: found.fillPercent,
    ...warned(found.faults),
  };
}

function design(inputs: Inputs): Record<string, unknown> {
  const found = designPistonGland({
    boreMm: inputs.bore!,
    ringInsideMm: inputs.ring_inside!,
    ringSectionMm: inputs.ring_section!,
    squeezePercent: inputs.wanted_squeeze_percent!,
    fillPercent: inputs.wanted_fill_percent!,
  });
  return {
    groove_bottom: found.grooveBottomMm,
    gland_depth: found.depthMm,
    groove_width: found.grooveWidthMm,
    stretch_percent: found.stretchPercent,
  };
}

function worst(inputs: Record<string, [number, number]>): Record<string, unknown> {
  const range = (name: string) => ({ leastMm: inputs[name]![0], mostMm: inputs[name]![1] });
  const { squeezePercent, fillPercent } = pistonGlandRange({
    bore: range('bore'),
    grooveBottom: range('groove_bottom'),
    ringSection: range('ring_section'),
    grooveWidth: range('groove_width'),
  });
  return {
    squeeze_percent: [squeezePercent.least, squeezePercent.most],
    fill_percent: [fillPercent.least, fillPercent.most],
  };
}

function packing(inputs: Inputs): Record<string, unknown> {
  const found = softPacking({
    rodMm: inputs.rod!,
    boxBoreMm: inputs.box_bore!,
    boxDepthMm: inputs.box_depth!,
    rings: inputs.rings!,
    compressionPercent: inputs.compression_percent!,
  });
  return {
    section: found.sectionMm,
    cut_length: found.cutLengthMm,
    stack_free: found.stackMm,
    stack_compressed: found.stackCompressedMm,
    gland_entry_left: found.glandEntryLeftMm,
  };
}
