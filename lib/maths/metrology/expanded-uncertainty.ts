import { MathsInputError } from '../check';
import { studentTQuantile } from '../distributions/student-t-quantile';

export type Expanded = {
  /** Coverage factor: Student's t for the confidence and the degrees of freedom. */
  factor: number;
  /** U = k u. */
  expanded: number;
};

/**
 * Expanded uncertainty U = k u with k = t_(1+p)/2(nu).
 *
 * Degrees of freedom need not be whole; pass `Math.floor(nu)` to follow JCGM 100 G.4.1 to the letter.
 * Below one degree there is no factor to give. Cost: one quantile. Source: [jcgm-100] 6.2, G.3.
 *
 * @throws {MathsInputError} `expanded-uncertainty/uncertainty`, `expanded-uncertainty/degrees`,
 *   `expanded-uncertainty/confidence`
 *
 * @example
 * expandedUncertainty(0.002, Infinity, 0.95); // { factor: 1.96, expanded: 0.00392 }
 */
export function expandedUncertainty(u: number, degrees: number, confidence: number): Expanded {
  if (!(u >= 0 && u < Infinity)) {
    throw new MathsInputError(
      'expanded-uncertainty/uncertainty',
      `expandedUncertainty requires an uncertainty not below zero, got ${u}`,
    );
  }
  if (!(degrees >= 1)) {
    throw new MathsInputError(
      'expanded-uncertainty/degrees',
      `expandedUncertainty requires one degree of freedom or more, got ${degrees}`,
    );
  }
  if (!(confidence > 0 && confidence < 1)) {
    throw new MathsInputError(
      'expanded-uncertainty/confidence',
      `expandedUncertainty requires a confidence above 0 and below 1, got ${confidence}`,
    );
  }
  const factor = studentTQuantile((1 + confidence) / 2, degrees);
  return { factor, expanded: factor * u };
}
