import { MathsInputError } from '../check';
import { requirePicometres } from './check-fit';

/** A handwheel and what one division of it does. */
export type Dial = {
  /** A diameter dial counts what comes off the diameter, a radius dial half of it. */
  reads: 'diameter' | 'radius';
  /** One division as it is marked, pm, above zero. */
  divisionPm: number;
  /** Dial movement for one of infeed: 10 for a top slide set over to 5.74 degrees; 1 if left out. */
  fineFeedRatio?: number;
};

export type DialSetting = {
  /** Whole divisions to turn, from zero. */
  divisions: number;
  /** The same as a length on the dial, pm. */
  dialPm: number;
  /** What those divisions take off the diameter, pm, to the nearest one. */
  takesOffPm: number;
  /** What they leave on the diameter, pm; below zero only when the piece is past already. */
  leavesOnPm: number;
  /** The setting that would leave nothing, pm on the dial, not rounded. */
  exactDialPm: number;
};

/**
 * What to put on the dial for the metal left on the diameter, in whole
 * divisions, rounded to the side that leaves metal on.
 *
 * exact = left x ratio, halved on a radius dial; divisions = floor(exact / division).
 * Rounding down is the safe side for a shaft and for a bore alike. Nothing left,
 * or less than nothing, is no divisions. Exact for whole fine-feed ratios.
 *
 * Source: common practice, no source.
 *
 * @throws {MathsInputError} `dial-setting/picometres`, `dial-setting/dial`
 *
 * @example
 * dialSetting(180_000_000, { reads: 'radius', divisionPm: 20_000_000 });
 * // divisions 4, dialPm 80_000_000, takesOffPm 160_000_000, leavesOnPm 20_000_000
 */
export function dialSetting(leftOnDiameterPm: number, dial: Dial): DialSetting {
  const { divisionPm, fineFeedRatio = 1 } = dial;
  requirePicometres('dial-setting', 'dialSetting', 'metal left', leftOnDiameterPm);
  requireDial(dial);
  const perDial = dial.reads === 'radius' ? 2 : 1;
  const wanted = leftOnDiameterPm * fineFeedRatio;
  const step = divisionPm * perDial;
  // The quotient of whole numbers below 2^53 never rounds up to a whole number it does not reach.
  const divisions = Math.max(0, Math.floor(wanted / step));
  const dialPm = divisions * divisionPm;
  const takesOffPm = Math.round((dialPm * perDial) / fineFeedRatio);
  return {
    divisions,
    dialPm,
    takesOffPm,
    leavesOnPm: leftOnDiameterPm - takesOffPm,
    exactDialPm: wanted / perDial,
  };
}

/** Refuses a division that is not whole picometres above zero or a ratio not above zero. */
export function requireDial({ divisionPm, fineFeedRatio = 1 }: Dial): void {
  const fine = Number.isFinite(fineFeedRatio) && fineFeedRatio > 0;
  if (Number.isSafeInteger(divisionPm) && divisionPm > 0 && fine) return;
  throw new MathsInputError(
    'dial-setting/dial',
    `dialSetting requires a division and a fine-feed ratio above zero, got ${divisionPm} and ${fineFeedRatio}`,
  );
}
