import { MathsInputError } from '../check';
import { itGrade } from './it-grade';
import { deviationUpToMm, gradeNames, holeJDeviationUm, shaftDeviationUm } from './tables';
import type { ToleranceClass } from './tolerance-class';

/** The limit of size nearest the nominal, and how far it stands from it. */
export type FundamentalDeviation = {
  limit: 'upper' | 'lower';
  /** Above zero is larger than the nominal, micrometres. */
  deviationUm: number;
};

/**
 * Fundamental deviation of a tolerance class at a nominal size, micrometres.
 *
 * Shafts a to h: upper deviation es; j to zc: lower deviation ei. Holes A to H:
 * EI = -es; J to ZC: ES = -ei, and over 3 mm to 500 mm, K, M and N to IT8 and P
 * to ZC to IT7: ES = -ei + delta, delta = IT(n) - IT(n-1). M6 from 250 to 315 mm
 * is -9; N above IT8 is 0 over 3 mm.
 *
 * Sizes above 0 to 3150 mm. Refused, because the standard gives none: js (it is
 * symmetrical, see classLimits), letters with no cell at the size, j and J in
 * other grades, K above IT8 over 3 mm, a, b, A, B and N above IT8 up to 1 mm,
 * corrected holes finer than IT3, and over 500 mm grades other than IT6 to IT16
 * (to IT18 for d to h and D to H). The letters cd, ef and fg are known to 10 mm.
 *
 * Source: [iso-286-1] tables 2 to 5.
 *
 * @throws {MathsInputError} `fundamental-deviation/size`, `fundamental-deviation/not-defined`
 *
 * @example
 * fundamentalDeviation(toleranceClass('g6'), 25); // { limit: 'upper', deviationUm: -7 }
 */
export function fundamentalDeviation(of: ToleranceClass, sizeMm: number): FundamentalDeviation {
  if (!(sizeMm > 0 && sizeMm <= 3150)) {
    throw new MathsInputError(
      'fundamental-deviation/size',
      `fundamentalDeviation requires a size above 0 and up to 3150 mm, got ${sizeMm}`,
    );
  }
  const deviationUm = isUsed(of, sizeMm)
    ? of.side === 'external'
      ? shaftUm(of, sizeMm)
      : holeUm(of, sizeMm)
    : undefined;
  if (deviationUm === undefined) {
    throw new MathsInputError(
      'fundamental-deviation/not-defined',
      `fundamentalDeviation requires a class defined at the size, got ${of.text} at ${sizeMm} mm`,
    );
  }
  const towardsClearance = of.letters <= 'h';
  const isUpper = towardsClearance === (of.side === 'external');
  return { limit: isUpper ? 'upper' : 'lower', deviationUm };
}

const order = (of: ToleranceClass) => gradeNames.indexOf(of.grade);
const IT3 = gradeNames.indexOf('IT3');
const IT6 = gradeNames.indexOf('IT6');
const IT7 = gradeNames.indexOf('IT7');
const IT8 = gradeNames.indexOf('IT8');
const IT16 = gradeNames.indexOf('IT16');

function isUsed(of: ToleranceClass, sizeMm: number): boolean {
  if (sizeMm <= 1) {
    if (of.letters === 'a' || of.letters === 'b') return false;
    return !(of.side === 'internal' && of.letters === 'n' && order(of) > IT8);
  }
  if (sizeMm > 500) return order(of) >= IT6 && (of.letters <= 'h' || order(of) <= IT16);
  return true;
}

function shaftUm(of: ToleranceClass, sizeMm: number): number | undefined {
  const { letters, grade } = of;
  if (letters === 'k' && !['IT4', 'IT5', 'IT6', 'IT7'].includes(grade)) return 0;
  if (letters !== 'j') return cell(shaftDeviationUm[letters], sizeMm);
  const row = { IT5: 'j5', IT6: 'j5', IT7: 'j7', IT8: 'j8' }[grade as string] ?? '';
  return cell(shaftDeviationUm[row], sizeMm);
}

function holeUm(of: ToleranceClass, sizeMm: number): number | undefined {
  const { letters, grade } = of;
  if (letters === 'j') return cell(holeJDeviationUm[`J${grade.slice(2)}`], sizeMm);
  const mirrored = cell(shaftDeviationUm[letters], sizeMm);
  if (mirrored === undefined) return undefined;
  const plainUm = 0 - mirrored;
  if (letters <= 'h' || sizeMm <= 3 || sizeMm > 500) {
    return letters === 'k' && sizeMm <= 3 && order(of) > IT8 ? 0 : plainUm;
  }
  if (letters === 'm' && grade === 'IT6' && sizeMm > 250 && sizeMm <= 315) return -9;
  if (order(of) > (letters < 'p' ? IT8 : IT7)) {
    if (letters === 'k') return undefined;
    return letters === 'n' ? 0 : plainUm;
  }
  if (order(of) < IT3) return undefined;
  return plainUm + itGrade(grade, sizeMm) - itGrade(gradeNames[order(of) - 1]!, sizeMm);
}

function cell(row: readonly (number | undefined)[] | undefined, sizeMm: number) {
  return row?.[deviationUpToMm.findIndex((upTo) => sizeMm <= upTo)];
}
