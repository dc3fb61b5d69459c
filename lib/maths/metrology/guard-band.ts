import { MathsInputError } from '../check';
import { normalQuantile } from '../distributions/normal-quantile';
import { requireUncertainty } from './tolerance-limits';

/** The factor ISO 14253-1:2017 gives for its default of 95 %; the exact quantile is 1.644854. */
export const guardFactorDefault = 1.65;

/**
 * Width by which a limit is moved so that a piece just inside it is inside with the given
 * probability: z_p u, one limit in play.
 *
 * Cost: one quantile. Source: [jcgm-106] 8.3.2; [iso-14253-1] for the default of 95 %.
 *
 * @throws {MathsInputError} `guard-band/uncertainty`, `guard-band/confidence`
 *
 * @example
 * guardBand(0.002, 0.95); // 0.00329
 */
export function guardBand(u: number, confidence: number): number {
  requireUncertainty('guardBand', 'guard-band', u);
  if (!(confidence >= 0.5 && confidence < 1)) {
    throw new MathsInputError(
      'guard-band/confidence',
      `guardBand requires a confidence from one half to below 1, got ${confidence}`,
    );
  }
  return normalQuantile(confidence) * u;
}
