import { MathsInputError } from '../check';

/** A contribution c_i u_i and the degrees of freedom it rests on; infinite when taken as known. */
export type Contribution = { contribution: number; degrees: number };

/**
 * Effective degrees of freedom by Welch and Satterthwaite: u^4 / sum (c_i u_i)^4/nu_i.
 *
 * For independent inputs only. Infinite when every contribution is taken as known or is zero. Not
 * truncated: JCGM 100 G.4.1 truncates for its table of t. Cost: O(inputs). Source: [jcgm-100] G.4.1.
 *
 * @throws {MathsInputError} `effective-degrees/contribution`
 *
 * @example
 * effectiveDegrees([{ contribution: 0.25, degrees: 9 }, { contribution: 0.57, degrees: 4 },
 *   { contribution: 0.82, degrees: 14 }]); // 18.9987
 */
export function effectiveDegrees(parts: readonly Contribution[]): number {
  let square = 0;
  let doubt = 0;
  parts.forEach(({ contribution, degrees }, i) => {
    if (!(degrees > 0) || !Number.isFinite(contribution)) {
      throw new MathsInputError(
        'effective-degrees/contribution',
        `effectiveDegrees requires finite contributions with degrees above zero, got ${contribution} and ${degrees} at index ${i}`,
      );
    }
    square += contribution * contribution;
    doubt += contribution ** 4 / degrees;
  });
  return doubt > 0 ? (square * square) / doubt : Infinity;
}
