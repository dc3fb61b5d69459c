import { MathsInputError } from '@/lib/maths/check';
import { itGrade } from '@/lib/maths/iso286/it-grade';
import { gradeNames, type Grade } from '@/lib/maths/iso286/tables';
import { iso286Question } from './iso286-question';

export const topic = 'Standard tolerance grades IT01 to IT18';

export function answer(inputs: Record<string, unknown>): Record<string, unknown> {
  const single = iso286Question(inputs);
  if (single !== undefined) return single;
  const sizeMm = inputs.up_to_and_including_mm as number;
  return Object.fromEntries(
    gradeNames.flatMap((grade) => {
      const toleranceUm = ifUsed(grade, sizeMm);
      return toleranceUm === undefined ? [] : [[grade, toleranceUm]];
    }),
  );
}

function ifUsed(grade: Grade, sizeMm: number): number | undefined {
  try {
    return itGrade(grade, sizeMm);
  } catch (error) {
    if (error instanceof MathsInputError && error.code === 'it-grade/not-used') return undefined;
    throw error;
  }
}
