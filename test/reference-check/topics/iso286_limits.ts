import { MathsInputError } from '@/lib/maths/check';
import { classLimits } from '@/lib/maths/iso286/class-limits';
import { iso286Question } from './iso286-question';
import type { ReferenceSet } from './topic';

export const topic = 'Limit deviations of common tolerance classes';

export function answer(
  inputs: Record<string, unknown>,
  set: ReferenceSet,
): Record<string, unknown> {
  return iso286Question(inputs) ?? allRanges(inputs, set);
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
