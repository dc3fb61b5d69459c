import { requireUncertainty } from './check-fit';

/**
 * Guard band of the decision rule of ISO 14253-1 in whole picometres, from the
 * standard uncertainties that stand in one decision.
 *
 * g = 1.65 sqrt(u1^2 + u2^2 + ...), 1.65 for 95 % with one limit in play; the
 * combined uncertainty and the band are each rounded up to a whole picometre.
 * The uncertainties are independent. Source: [iso-14253-1].
 *
 * @throws {MathsInputError} `guard-picometres/uncertainty`
 *
 * @example
 * guardPicometres([600_000, 800_000]); // 1_650_000
 */
export function guardPicometres(standardUncertaintiesPm: readonly number[]): number {
  for (const u of standardUncertaintiesPm)
    requireUncertainty('guard-picometres', 'guardPicometres', u);
  // A millionth of a picometre is taken off so that the rounding of doubles adds no whole one.
  const combinedPm = Math.max(0, Math.ceil(Math.hypot(...standardUncertaintiesPm) - 1e-6));
  return Math.ceil((165 * combinedPm) / 100);
}
