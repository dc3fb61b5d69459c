import { MathsInputError } from '../check';
import { normalQuantile } from '../distributions/normal-quantile';

/**
 * The reading beyond which a limit is exceeded with the given probability, when the uncertainty is a
 * fixed part w of the reading: limit / (1 - z_p w).
 *
 * Cost: one quantile. Source: [jcgm-106] 8.3.3.3, the speed example.
 *
 * @throws {MathsInputError} `acceptance-limit-relative/limit`,
 *   `acceptance-limit-relative/confidence`, `acceptance-limit-relative/uncertainty`
 *
 * @example
 * acceptanceLimitRelative(100, 0.02, 0.999); // 106.59
 */
export function acceptanceLimitRelative(limit: number, part: number, confidence: number): number {
  if (!(limit > 0 && limit < Infinity)) {
    throw new MathsInputError(
      'acceptance-limit-relative/limit',
      `acceptanceLimitRelative requires a limit above zero, got ${limit}`,
    );
  }
  if (!(confidence > 0 && confidence < 1)) {
    throw new MathsInputError(
      'acceptance-limit-relative/confidence',
      `acceptanceLimitRelative requires a confidence above 0 and below 1, got ${confidence}`,
    );
  }
  const left = 1 - normalQuantile(confidence) * part;
  if (!(part >= 0 && left > 0)) {
    throw new MathsInputError(
      'acceptance-limit-relative/uncertainty',
      `acceptanceLimitRelative requires a part from 0 up that leaves a limit, got ${part}`,
    );
  }
  return limit / left;
}
