import { MathsInputError } from '@/lib/maths/check';
import { classLimits } from '@/lib/maths/iso286/class-limits';
import { fitLimits } from '@/lib/maths/iso286/fit-limits';
import type { ReferenceSet } from './topic';

export const topic = 'Limit deviations of common tolerance classes';

export function answer(
  inputs: Record<string, unknown>,
  set: ReferenceSet,
): Record<string, unknown> {
  try {
    if (inputs.hole !== undefined) return fit(inputs);
    const size = inputs.size_mm ?? inputs.nominal_mm;
    return size === undefined ? allRanges(inputs, set) : one(inputs, size as number);
  } catch (error) {
    if (error instanceof MathsInputError) return { error: error.message };
    throw error;
  }
}

function allRanges(inputs: Record<string, unknown>, set: ReferenceSet): Record<string, unknown> {
  const ranges = set.data.size_ranges_mm as [number, number][];
  return {
    upper_lower_um: ranges.map(([, upTo]) => ifDefined(inputs.class as string, upTo)),
  };
}

/** Limits at one size, or null where the class is not defined. */
function ifDefined(text: string, sizeMm: number): [number, number] | null {
  try {
    const { upperUm, lowerUm } = classLimits(text, sizeMm);
    return [upperUm, lowerUm];
  } catch (error) {
    if (error instanceof MathsInputError && error.code === 'fundamental-deviation/not-defined') {
      return null;
    }
    throw error;
  }
}

/** A single question: one class at one size. */
function one(inputs: Record<string, unknown>, sizeMm: number): Record<string, unknown> {
  const { upperUm, lowerUm } = classLimits(inputs.class as string, sizeMm);
  return { upper_um: upperUm, lower_um: lowerUm, upper_lower_um: [upperUm, lowerUm] };
}

function fit(inputs: Record<string, unknown>): Record<string, unknown> {
  const found = fitLimits(`${inputs.hole}/${inputs.shaft}`, inputs.nominal_mm as number);
  return {
    hole_um: [found.hole.upperUm, found.hole.lowerUm],
    shaft_um: [found.shaft.upperUm, found.shaft.lowerUm],
    max_clearance_um: found.maxClearanceUm,
    min_clearance_um: found.minClearanceUm,
    kind: found.kind,
  };
}
