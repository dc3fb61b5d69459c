import { lobedSection } from '@/lib/maths/form/lobed-section';
import { ovalFromDirections } from '@/lib/maths/form/oval-from-directions';
import {
  leastDifferenceMm,
  twoPointForm,
  type TwoPointGrid,
} from '@/lib/maths/form/two-point-form';

export const topic = 'Form from two-point readings: taper, ovality, barrel, waist';

export function answer(inputs: Record<string, unknown>): Record<string, unknown> {
  if (inputs.kind === 'oval_from_directions') return oval(inputs);
  if (inputs.kind === 'lobes') return lobes(inputs);
  return grid(inputs);
}

/** Amounts that cannot be told from one station or one direction are 0 in this set. */
function grid(inputs: Record<string, unknown>): Record<string, unknown> {
  const directions = inputs.directions as string[];
  const readings = inputs.readings as number[][];
  const question: TwoPointGrid = {
    side: inputs.kind === 'bore' ? 'internal' : 'external',
    diametersMm: readings,
  };
  if (inputs.positions_mm !== undefined) question.positionsMm = inputs.positions_mm as number[];
  const form = twoPointForm(question);
  const ovality = readings.map((_, s) => form.ovality.find((one) => one.station === s));
  const taper = directions.map((_, d) => form.taper.find((one) => one.direction === d));
  const answers: Record<string, unknown> = {
    min: form.minMm,
    max: form.maxMm,
    mean: form.meanMm,
    station_means: form.stationMeans.map((one) => one.meanMm),
    ovality_per_station: ovality.map((one) => one?.amountMm ?? 0),
    largest_ovality: Math.max(0, ...form.ovality.map((one) => one.amountMm)),
    wide_direction_per_station: ovality.map((one) =>
      one?.widestDirection === undefined ? null : directions[one.widestDirection],
    ),
    taper_per_direction: taper.map((one) => one?.amountMm ?? 0),
    taper_of_means: form.taperOfMeansMm ?? 0,
  };
  if (form.middleMinusEndsMm !== undefined) {
    answers.middle_minus_ends = form.middleMinusEndsMm;
    answers.shape = shapeWord(form.middleMinusEndsMm);
  }
  if (form.slopeMmPerMm !== undefined) {
    answers.taper_per_mm_least_squares = form.slopeMmPerMm;
    answers.half_angle_arcmin = form.halfAngleArcmin;
  }
  return answers;
}

function shapeWord(middleMinusEndsMm: number): string {
  if (Math.abs(middleMinusEndsMm) < leastDifferenceMm) return 'straight';
  return middleMinusEndsMm > 0 ? 'barrel' : 'waist';
}

function oval(inputs: Record<string, unknown>): Record<string, unknown> {
  const fitted = ovalFromDirections({
    directionsDeg: inputs.angles_deg as number[],
    diametersMm: inputs.diameters_mm as number[],
  });
  return {
    mean_mm: fitted.meanMm,
    ovality_full_mm: fitted.ovalityMm,
    large_axis_deg: fitted.largeAxisDeg,
    ovality_seen_by_max_minus_min_mm: fitted.seenMm,
  };
}

function lobes(inputs: Record<string, unknown>): Record<string, unknown> {
  const section = lobedSection({
    lobes: inputs.lobes as number,
    amplitudeMm: inputs.a_mm as number,
  });
  return {
    two_point_diameter_varies_by_mm: section.twoPointVariationMm,
    roundness_zone_mm: section.roundnessZoneMm,
    two_point_sees_it: section.twoPointSees,
  };
}
