import { MathsInputError } from '../check';

/**
 * Numerical tolerance of a standard uncertainty: half a unit of its last figure kept, with one or two
 * significant figures. u written c x 10^l with c whole: 10^l / 2.
 *
 * Cost: O(1). Source: [jcgm-101] 7.9.2.
 *
 * @throws {MathsInputError} `numerical-tolerance/uncertainty`
 *
 * @example
 * numericalTolerance(35.8, 2); // 0.5, for 36
 */
export function numericalTolerance(u: number, figures: 1 | 2): number {
  if (!(u > 0 && u < Infinity)) {
    throw new MathsInputError(
      'numerical-tolerance/uncertainty',
      `numericalTolerance requires an uncertainty above zero, got ${u}`,
    );
  }
  const power = Number(u.toExponential(figures - 1).split('e')[1]) - (figures - 1);
  return 0.5 * Number(`1e${power}`);
}
