import { MathsInputError } from '../check';
import { classLimits, type ClassLimits } from './class-limits';

export type FitLimits = {
  hole: ClassLimits;
  shaft: ClassLimits;
  /** Below zero is interference, micrometres. */
  minClearanceUm: number;
  maxClearanceUm: number;
  kind: 'clearance' | 'transition' | 'interference';
};

/**
 * Clearances of a typed fit such as `H7/g6` at a nominal size, micrometres.
 *
 * max = ES - ei, min = EI - es; a clearance fit has min >= 0, an interference
 * fit max <= 0, and a transition fit is the rest.
 *
 * The hole stands first. Sizes above 0 to 3150 mm. Source: [iso-286-1].
 *
 * @throws {MathsInputError} `fit-limits/text`, and what classLimits throws
 *
 * @example
 * fitLimits('H7/g6', 25); // minClearanceUm 7, maxClearanceUm 41, kind 'clearance'
 */
export function fitLimits(typed: string, nominalMm: number): FitLimits {
  const [holeText = '', shaftText = '', ...more] = typed.split('/');
  const halves = more.length === 0 && shaftText !== '';
  const hole = halves ? classLimits(holeText, nominalMm) : undefined;
  const shaft = halves ? classLimits(shaftText, nominalMm) : undefined;
  if (hole?.side !== 'internal' || shaft?.side !== 'external') {
    throw new MathsInputError(
      'fit-limits/text',
      `fitLimits requires a hole and a shaft such as H7/g6, got ${JSON.stringify(typed)}`,
    );
  }
  const maxClearanceUm = hole.upperUm - shaft.lowerUm;
  const minClearanceUm = hole.lowerUm - shaft.upperUm;
  return {
    hole,
    shaft,
    minClearanceUm,
    maxClearanceUm,
    kind: kindOf(minClearanceUm, maxClearanceUm),
  };
}

function kindOf(minUm: number, maxUm: number): FitLimits['kind'] {
  if (minUm >= 0) return 'clearance';
  return maxUm <= 0 ? 'interference' : 'transition';
}
