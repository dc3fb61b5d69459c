import { MathsInputError } from '../check';
import { classLimits, type ClassLimits } from './class-limits';
import { gradeNames, shaftDeviationUm } from './tables';

/** One class with its limit deviations, micrometres. */
export type DefinedClass = ClassLimits & { text: string };

/**
 * Every tolerance class of one side in grades IT4 to IT13 that is defined at a
 * nominal size, with its limits, in the order of the letters and grades.
 *
 * Sizes above 0 to 3150 mm. Source: [iso-286-1].
 *
 * @throws {MathsInputError} `it-grade/size`
 *
 * @example
 * definedClasses('internal', 25).length; // 238
 */
export function definedClasses(side: ClassLimits['side'], nominalMm: number): DefinedClass[] {
  const numbers = gradeNames.slice(gradeNames.indexOf('IT4'), gradeNames.indexOf('IT13') + 1);
  return classLetters.flatMap((letters) =>
    numbers.flatMap((grade) => {
      const written = side === 'internal' ? letters.toUpperCase() : letters;
      const text = `${written}${grade.slice(2)}`;
      const limits = limitsIfDefined(text, nominalMm);
      return limits === undefined ? [] : [{ text, ...limits }];
    }),
  );
}

function limitsIfDefined(text: string, nominalMm: number) {
  try {
    return classLimits(text, nominalMm);
  } catch (error) {
    const isGap =
      error instanceof MathsInputError && error.code === 'fundamental-deviation/not-defined';
    if (isGap) return undefined;
    throw error;
  }
}

/** Letters of the standard in the order of the alphabet, j once and js after it. */
const classLetters: readonly string[] = [
  ...Object.keys(shaftDeviationUm).filter((name) => !name.startsWith('j')),
  'j',
  'js',
].sort();
