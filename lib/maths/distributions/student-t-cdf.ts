import { studentTUpperTail } from './student-t-upper-tail';

/**
 * Probability that Student's t is at most a value.
 *
 * The upper tail, `studentTUpperTail`, at the mirrored place: exact symmetry and full relative
 * precision below zero.
 *
 * Source: [dlmf] 8.17.
 *
 * @throws {MathsInputError} `student-t-upper-tail/degrees`, `student-t-upper-tail/place`
 */
export function studentTCdf(t: number, degrees: number): number {
  return studentTUpperTail(-t, degrees);
}
