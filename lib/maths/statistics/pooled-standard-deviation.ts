import { MathsInputError } from '../check';

/** The spread of one set of repeats and what it rests on. */
export type SpreadOfSet = {
  sd: number;
  /** Degrees of freedom: readings less one. */
  degrees: number;
};

/**
 * One standard deviation from several sets of repeats of like features:
 * s_p^2 = sum nu_i s_i^2 / sum nu_i, with sum nu_i degrees of freedom.
 *
 * The sets must share one spread; `bartlettTest` tells when they plainly do not. A set of one reading
 * has zero degrees of freedom and adds nothing. Cost: O(sets). Source: [jcgm-100] 4.2.4, H.1.3.2.
 *
 * @throws {MathsInputError} `pooled-standard-deviation/set`, `pooled-standard-deviation/too-few`
 *
 * @example
 * pooledStandardDeviation([{ sd: 0.001, degrees: 4 }, { sd: 0.002, degrees: 2 }]);
 * // { sd: 0.00141, degrees: 6 }
 */
export function pooledStandardDeviation(sets: readonly SpreadOfSet[]): SpreadOfSet {
  let squares = 0;
  let degrees = 0;
  sets.forEach((set, i) => {
    if (!(set.sd >= 0 && set.sd < Infinity && set.degrees >= 0 && set.degrees < Infinity)) {
      throw new MathsInputError(
        'pooled-standard-deviation/set',
        `pooledStandardDeviation requires spreads and degrees not below zero, got ${set.sd} and ${set.degrees} at index ${i}`,
      );
    }
    squares += set.degrees * set.sd * set.sd;
    degrees += set.degrees;
  });
  if (degrees === 0) {
    throw new MathsInputError(
      'pooled-standard-deviation/too-few',
      'pooledStandardDeviation requires a set with two readings, got none',
    );
  }
  return { sd: Math.sqrt(squares / degrees), degrees };
}
