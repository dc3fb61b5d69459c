import { decimalsForResolution } from '@/lib/units/decimals-for-resolution';
import { formatLength } from '@/lib/units/format-length';
import { pmPerUnit } from '@/lib/units/picometres';
import { shownLength, type Shown } from './shown-size';

/** A target with the working limits about it, pm; the limits cross where these gauges cannot prove the fit. */
export type TargetSizes = { targetPm: number; noLargerPm: number; noSmallerPm: number };

/**
 * A target and its working limits as they are shown, all to one place: the gauge's own; the next one where the
 * band has no room for two of its steps, or where the target would read as outside its limits. The limits
 * are rounded inward, never outward, in the unit they are shown in.
 */
export function targetFigures(
  target: TargetSizes,
  resolutionPm: number,
  shown: Shown,
): { size: string; largest: string; smallest: string } {
  const { targetPm, noLargerPm, noSmallerPm } = target;
  const bandPm = noLargerPm - noSmallerPm;
  const at = (stepPm: number) => figuresAt(target, stepPm, shown);
  const coarse = at(resolutionPm);
  const isLimited = bandPm >= 0 && targetPm >= noSmallerPm && targetPm <= noLargerPm;
  const agrees = coarse.sizePm >= coarse.smallestPm && coarse.sizePm <= coarse.largestPm;
  const isFiner = bandPm >= 0 && (bandPm < 2 * resolutionPm || (isLimited && !agrees));
  const { size, largest, smallest } = isFiner ? at(resolutionPm / 10) : coarse;
  return { size, largest, smallest };
}

function figuresAt(target: TargetSizes, stepPm: number, shown: Shown) {
  const decimals = decimalsForResolution(stepPm, shown.unit);
  const placePm = pmPerUnit(shown.unit) / 10 ** decimals;
  // A gauge of 0.005 stops at its own steps; one marked in the other unit has none in this one.
  const inStepsOf = stepPm % placePm === 0 ? stepPm : placePm;
  const sizePm = Math.round(target.targetPm / placePm) * placePm;
  const largestPm = Math.floor(target.noLargerPm / inStepsOf) * inStepsOf;
  const smallestPm = Math.ceil(target.noSmallerPm / inStepsOf) * inStepsOf;
  const limit = (pm: number) => formatLength(pm, { ...shown, decimals });
  return {
    sizePm,
    largestPm,
    smallestPm,
    size: shownLength(target.targetPm, stepPm, shown),
    largest: limit(largestPm),
    smallest: limit(smallestPm),
  };
}
