import { requireFit, requireSize, requireUncertainty, type Fit } from './check-fit';
import { guardPicometres } from './guard-picometres';

export type Target = {
  /** Size to aim at, pm. */
  aimPm: number;
  /** Sizes at which the fit is at its limits, the partner taken as measured, pm. */
  lowerPm: number;
  upperPm: number;
  guardPm: number;
  /** Sizes that prove the fit when measured, or why there are none. */
  working:
    | { kind: 'band'; lowerPm: number; upperPm: number }
    /** The guard on both sides is wider than the fit by this much: these gauges cannot prove it. */
    | { kind: 'none'; wantingPm: number };
  /** Whether the aim itself lies in the working band. */
  aimIsSafe: boolean;
};

/**
 * Size to make a piece to, from its partner as measured and the fit wanted.
 *
 * To a bore B: shaft from B - max to B - min, aim B - aim. To a shaft S: bore
 * from S + min to S + max, aim S + aim. The working limits stand a guard of
 * 1.65 sqrt(up^2 + um^2) inside, up the partner's standard uncertainty and um
 * the one with which this piece will be measured: a size read inside them is
 * inside the fit by the rule of ISO 14253-1. All on whole picometres.
 *
 * Limits: one size each, at 20 degrees C; form and heat are for the caller.
 * Source: [iso-14253-1], [iso-286-1] for the signs.
 *
 * @throws {MathsInputError} `target-from-partner/size`, `.../uncertainty`, `.../fit`
 *
 * @example
 * targetFromPartner({
 *   make: 'external', partner: { sizePm: 18_008_000_000, uPm: 300_000 }, uMadePm: 400_000,
 *   fit: { minPm: 7_000_000, aimPm: 10_000_000, maxPm: 13_000_000 },
 * }); // aimPm 17_998_000_000, working 17_995_825_000 to 18_000_175_000
 */
export function targetFromPartner(question: {
  /** The piece to be made. */
  make: 'internal' | 'external';
  partner: { sizePm: number; uPm: number };
  uMadePm: number;
  fit: Fit;
}): Target {
  const { make, partner, uMadePm, fit } = question;
  requireSize('target-from-partner', 'targetFromPartner', 'a partner', partner.sizePm);
  requireUncertainty('target-from-partner', 'targetFromPartner', partner.uPm);
  requireUncertainty('target-from-partner', 'targetFromPartner', uMadePm);
  requireFit('target-from-partner', 'targetFromPartner', fit);
  const sizeAt = (clearancePm: number) =>
    make === 'external' ? partner.sizePm - clearancePm : partner.sizePm + clearancePm;
  const [lowerPm, upperPm] =
    make === 'external'
      ? [sizeAt(fit.maxPm), sizeAt(fit.minPm)]
      : [sizeAt(fit.minPm), sizeAt(fit.maxPm)];
  requireSize('target-from-partner', 'targetFromPartner', 'a target', lowerPm);
  const aimPm = sizeAt(fit.aimPm);
  const guardPm = guardPicometres([partner.uPm, uMadePm]);
  const base = { aimPm, lowerPm, upperPm, guardPm };
  const [workingLower, workingUpper] = [lowerPm + guardPm, upperPm - guardPm];
  if (workingLower > workingUpper) {
    const wantingPm = workingLower - workingUpper;
    return { ...base, working: { kind: 'none', wantingPm }, aimIsSafe: false };
  }
  return {
    ...base,
    working: { kind: 'band', lowerPm: workingLower, upperPm: workingUpper },
    aimIsSafe: aimPm >= workingLower && aimPm <= workingUpper,
  };
}
