import { MathsInputError } from '@/lib/maths/check';
import { itGrade } from '@/lib/maths/iso286/it-grade';
import { gradeNames, type Grade } from '@/lib/maths/iso286/tables';

export const topic = 'Standard tolerance grades IT01 to IT18';

export function answer(inputs: Record<string, unknown>): Record<string, unknown> {
  if (inputs.grade !== undefined) return one(inputs);
  const sizeMm = inputs.up_to_and_including_mm as number;
  return Object.fromEntries(
    gradeNames.flatMap((grade) => {
      const toleranceUm = ifUsed(grade, sizeMm);
      return toleranceUm === undefined ? [] : [[grade, toleranceUm]];
    }),
  );
}

/** A single question: one grade, written IT7 or 7, at one size. */
function one(inputs: Record<string, unknown>): Record<string, unknown> {
  const grade = `IT${String(inputs.grade).replace(/^IT/, '')}` as Grade;
  const sizeMm = (inputs.size_mm ?? inputs.nominal_mm) as number;
  try {
    const um = itGrade(grade, sizeMm);
    return { um, it_um: um, tolerance_um: um, [grade]: um };
  } catch (error) {
    if (error instanceof MathsInputError) return { error: error.message };
    throw error;
  }
}

function ifUsed(grade: Grade, sizeMm: number): number | undefined {
  try {
    return itGrade(grade, sizeMm);
  } catch (error) {
    if (error instanceof MathsInputError && error.code === 'it-grade/not-used') return undefined;
    throw error;
  }
}
