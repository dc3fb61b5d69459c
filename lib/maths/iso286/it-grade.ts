import { MathsInputError } from '../check';
import { gradeNames, toleranceUm, toleranceUpToMm, type Grade } from './tables';

/**
 * Standard tolerance of a grade at a nominal size, micrometres, as tabulated.
 *
 * Sizes above 0 to 3150 mm; a size belongs to the range over < size <= up to.
 * IT01 and IT0 end at 500 mm; IT14 to IT18 are not used up to 1 mm.
 *
 * Source: [iso-286-1] table 1. Read from the table, never from a formula.
 *
 * @throws {MathsInputError} `it-grade/grade`, `it-grade/size`, `it-grade/not-used`
 *
 * @example
 * itGrade('IT7', 25); // 21
 */
export function itGrade(grade: Grade, sizeMm: number): number {
  const column = gradeNames.indexOf(grade);
  if (column < 0) {
    throw new MathsInputError(
      'it-grade/grade',
      `itGrade requires a grade IT01 to IT18, got ${grade}`,
    );
  }
  if (!(sizeMm > 0 && sizeMm <= 3150)) {
    throw new MathsInputError(
      'it-grade/size',
      `itGrade requires a size above 0 and up to 3150 mm, got ${sizeMm}`,
    );
  }
  const row = toleranceUm[toleranceUpToMm.findIndex((upTo) => sizeMm <= upTo)]!;
  const tolerance = row[column];
  if (tolerance === undefined || (sizeMm <= 1 && column >= gradeNames.indexOf('IT14'))) {
    throw new MathsInputError(
      'it-grade/not-used',
      `itGrade requires a grade used at the size, got ${grade} at ${sizeMm} mm`,
    );
  }
  return tolerance;
}
