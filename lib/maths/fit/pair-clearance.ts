import { requireFit, requireSize, requireUncertainty, type Fit } from './check-fit';
import { guardPicometres } from './guard-picometres';
import { probabilityBetween } from './probability-between';
import { verdictOf, type Verdict } from './verdict-of';

/** A measured size, pm, and its standard uncertainty, pm. */
export type MeasuredSize = { sizePm: number; uPm: number };

export type PairClearance = {
  /** Bore less shaft, pm, exact; below zero is interference. */
  clearancePm: number;
  /** Standard uncertainty of the clearance, pm. */
  uPm: number;
  guardPm: number;
  /** Probability that the true clearance is inside the fit. */
  probabilityInside: number;
  verdict: Verdict;
};

/**
 * Clearance of a measured pair, how well it is known, and the verdict on it.
 *
 * c = bore - shaft on whole picometres; u = sqrt(ub^2 + us^2), the two sizes
 * measured independently; guard 1.65 u. Two readings of one micrometer share
 * its error, which then cancels: give the uncertainties without that part.
 *
 * Source: [jcgm-100] 5.1.2, [jcgm-106], [iso-14253-1].
 *
 * @throws {MathsInputError} `pair-clearance/size`, `pair-clearance/uncertainty`, `pair-clearance/fit`
 *
 * @example
 * pairClearance({ bore, shaft, fit }).verdict; // { kind: 'near', side: 'bottom' }
 */
export function pairClearance(pair: {
  bore: MeasuredSize;
  shaft: MeasuredSize;
  fit: Fit;
}): PairClearance {
  const { bore, shaft, fit } = pair;
  requireFit('pair-clearance', 'pairClearance', fit);
  for (const size of [bore, shaft]) {
    requireSize('pair-clearance', 'pairClearance', 'sizes', size.sizePm);
    requireUncertainty('pair-clearance', 'pairClearance', size.uPm);
  }
  const clearancePm = bore.sizePm - shaft.sizePm;
  const uPm = Math.hypot(bore.uPm, shaft.uPm);
  const guardPm = guardPicometres([bore.uPm, shaft.uPm]);
  const { minPm: lower, maxPm: upper } = fit;
  return {
    clearancePm,
    uPm,
    guardPm,
    probabilityInside: probabilityBetween({ value: clearancePm, u: uPm, lower, upper }),
    verdict: verdictOf(clearancePm, { lowerPm: lower, upperPm: upper }, guardPm),
  };
}
