import { MathsInputError } from '../check';
import { normalCdf } from '../distributions/normal-cdf';

/**
 * The largest chance of taking a bad piece for a good one with a guard of w = r u: PHI(-r), for a piece
 * whose size stands exactly at the limit.
 *
 * Cost: O(1). Source: [jcgm-106] 8.3.2.
 *
 * @throws {MathsInputError} `false-acceptance-at-limit/ratio`
 *
 * @example
 * falseAcceptanceAtLimit(2); // 0.02275
 */
export function falseAcceptanceAtLimit(guardOverUncertainty: number): number {
  if (!Number.isFinite(guardOverUncertainty)) {
    throw new MathsInputError(
      'false-acceptance-at-limit/ratio',
      `falseAcceptanceAtLimit requires a finite ratio, got ${guardOverUncertainty}`,
    );
  }
  return normalCdf(-guardOverUncertainty);
}
