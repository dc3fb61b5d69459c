import { fundamentalDeviation } from './fundamental-deviation';
import { itGrade } from './it-grade';
import { toleranceClass, type ToleranceClass } from './tolerance-class';

/** Limit deviations from the nominal, micrometres; times a million they are whole picometres. */
export type ClassLimits = {
  side: ToleranceClass['side'];
  upperUm: number;
  lowerUm: number;
};

/**
 * Limit deviations of a typed tolerance class at a nominal size, micrometres.
 *
 * The fundamental deviation is one limit and the standard tolerance the distance
 * to the other; js and JS are +-IT/2, left at half micrometres (the standard
 * allows grades 7 to 11 to be rounded to whole ones).
 *
 * Sizes above 0 to 3150 mm. Source: [iso-286-1], [iso-286-2].
 *
 * @throws {MathsInputError} `tolerance-class/...`, `it-grade/...`, `fundamental-deviation/...`
 *
 * @example
 * classLimits('H7', 25); // { side: 'internal', upperUm: 21, lowerUm: 0 }
 */
export function classLimits(typed: string, nominalMm: number): ClassLimits {
  const of = toleranceClass(typed);
  const toleranceUm = itGrade(of.grade, nominalMm);
  if (of.letters === 'js') {
    return { side: of.side, upperUm: toleranceUm / 2, lowerUm: -toleranceUm / 2 };
  }
  const { limit, deviationUm } = fundamentalDeviation(of, nominalMm);
  return limit === 'upper'
    ? { side: of.side, upperUm: deviationUm, lowerUm: deviationUm - toleranceUm }
    : { side: of.side, upperUm: deviationUm + toleranceUm, lowerUm: deviationUm };
}
