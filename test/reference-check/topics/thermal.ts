import { clearanceAtTemperatures } from '@/lib/maths/thermal/clearance-at-temperatures';
import { clearanceOverRange } from '@/lib/maths/thermal/clearance-over-range';
import { heatOnePiece } from '@/lib/maths/thermal/heat-one-piece';
import { sizeAt20 } from '@/lib/maths/thermal/size-at-20';
import { sizeAtTemperature } from '@/lib/maths/thermal/size-at-temperature';
import { temperatureForClearance } from '@/lib/maths/thermal/temperature-for-clearance';

export const topic =
  'Thermal expansion: size at 20 C, clearance at temperature, cold bind, one-sided heating';

type Inputs = Record<string, number>;

export function answer(inputs: Record<string, unknown>): Record<string, unknown> {
  const numbers = inputs as Inputs;
  switch (inputs.kind) {
    case 'size_at_temperature':
      return sizeHot(numbers);
    case 'size_at_20_from_reading':
      return size20(numbers);
    case 'size_at_20_with_uncertainty':
      return size20WithUncertainty(numbers);
    case 'clearance_at_temperatures':
      return clearance(numbers);
    case 'clearance_over_range':
      return overRange(inputs);
    case 'common_temperature_for_clearance':
      return commonTemperature(numbers);
    case 'heat_or_cool_one_part':
      return oneHeated(inputs);
    default:
      throw new Error(`no answer for kind ${String(inputs.kind)}`);
  }
}

function sizeHot(inputs: Inputs): Record<string, unknown> {
  const size = sizeAtTemperature({
    size20Mm: inputs.size20_mm!,
    expansionPerC: inputs.alpha_per_C!,
    temperatureC: inputs.T_C!,
  });
  return { size_mm: size, change_mm: size - inputs.size20_mm! };
}

function size20(inputs: Inputs): Record<string, unknown> {
  const { size20Mm, correctionMm } = sizeAt20({
    readingMm: inputs.reading_mm!,
    pieceExpansionPerC: inputs.alpha_part!,
    pieceTemperatureC: inputs.T_part_C!,
    gaugeExpansionPerC: inputs.alpha_gauge!,
    gaugeTemperatureC: inputs.T_gauge_C!,
  });
  const warmer =
    inputs.alpha_gauge! * (inputs.T_gauge_C! - 20) - inputs.alpha_part! * (inputs.T_part_C! - 20);
  return {
    size20_mm: size20Mm,
    correction_mm: correctionMm,
    first_order_mm: inputs.reading_mm! * (1 + warmer),
  };
}

function size20WithUncertainty(inputs: Inputs): Record<string, unknown> {
  const found = sizeAt20({
    readingMm: inputs.reading_mm!,
    uReadingMm: inputs.u_reading_mm!,
    pieceExpansionPerC: inputs.alpha!,
    uPieceExpansionPerC: inputs.u_alpha!,
    pieceTemperatureC: inputs.T_C!,
    uPieceTemperatureC: inputs.u_T_C!,
  });
  const { readingMm, expansionMm, temperatureMm } = found.parts;
  return {
    size20_mm: found.size20Mm,
    u_mm: found.uMm,
    parts_mm: { reading: readingMm, alpha: expansionMm, temperature: temperatureMm },
  };
}

function piecesOf(inputs: Inputs) {
  return {
    bore: { size20Mm: inputs.bore20_mm!, expansionPerC: inputs.alpha_bore! },
    shaft: { size20Mm: inputs.shaft20_mm!, expansionPerC: inputs.alpha_shaft! },
  };
}

function clearance(inputs: Inputs): Record<string, unknown> {
  const pair = piecesOf(inputs);
  const hot = clearanceAtTemperatures({
    ...pair,
    boreC: inputs.T_bore_C!,
    shaftC: inputs.T_shaft_C!,
  });
  const cold = clearanceAtTemperatures({ ...pair, boreC: 20, shaftC: 20 });
  return {
    bore_mm: hot.boreMm,
    shaft_mm: hot.shaftMm,
    clearance_mm: hot.clearanceMm,
    cold_clearance_mm: cold.clearanceMm,
  };
}

function overRange(inputs: Record<string, unknown>): Record<string, unknown> {
  const found = clearanceOverRange({
    ...piecesOf(inputs as Inputs),
    temperaturesC: inputs.T_C as number[],
  });
  return {
    clearance_mm: found.clearancesMm,
    smallest_mm: found.smallestMm,
    at_C: found.smallestAtC,
  };
}

function commonTemperature(inputs: Inputs): Record<string, unknown> {
  const found = temperatureForClearance({
    ...piecesOf(inputs),
    clearanceMm: inputs.clearance_mm!,
  });
  if (found.kind === 'unchanging') {
    return { T_C: null, reason: 'both grow alike: no temperature changes the clearance' };
  }
  const { clearancePerC, tighterWhen } = found;
  const line = { clearance_change_per_C_mm: clearancePerC, tighter_when: tighterWhen };
  if (found.kind === 'never-so-cold') {
    return { T_C: null, reason: 'the temperature would lie below absolute zero', ...line };
  }
  return { T_C: found.temperatureC, T_C_approximate: found.temperatureC, ...line };
}

function oneHeated(inputs: Record<string, unknown>): Record<string, unknown> {
  const numbers = inputs as Inputs;
  const found = heatOnePiece({
    change: inputs.part === 'hub' ? 'bore' : 'shaft',
    bore: { size20Mm: numbers.bore20_mm!, expansionPerC: numbers.alpha! },
    shaft: { size20Mm: numbers.shaft20_mm!, expansionPerC: numbers.alpha! },
    gapMm: numbers.working_gap_mm!,
    otherC: numbers.other_part_C!,
  });
  if (found.kind !== 'found') return { T_C: null, reason: 'it would pass absolute zero' };
  return { T_C: found.temperatureC, change_C: found.changeC };
}
