import { decimalsForResolution } from '@/lib/units/decimals-for-resolution';
import { formatLength } from '@/lib/units/format-length';
import { pmPerUnit } from '@/lib/units/picometres';
import type { Shown } from './shown-size';

/** A target with the working limits about it, pm; the limits cross where these gauges cannot prove the fit. */
export type TargetSizes = { targetPm: number; noLargerPm: number; noSmallerPm: number };

/**
 * A target and its working limits as they are shown: to the place of the gauge, or where the band has no room for two
 * of its steps, the limits to the next one (and the next again where it has none for one), and the target too where
 * the gauge's place would put it outside them. The limits are rounded inward, never outward, in the unit they are
 * shown in; a target within them never reads as outside what is shown of them.
 */
export function targetFigures(
  { targetPm, noLargerPm, noSmallerPm }: TargetSizes,
  resolutionPm: number,
  shown: Shown,
): { size: string; largest: string; smallest: string } {
  const stepPm = stepFor(noLargerPm - noSmallerPm, resolutionPm);
  const decimals = decimalsForResolution(stepPm, shown.unit);
  const placePm = pmPerUnit(shown.unit) / 10 ** decimals;
  const ofGauge = decimalsForResolution(resolutionPm, shown.unit);
  const gaugePlacePm = pmPerUnit(shown.unit) / 10 ** ofGauge;
  const asReadPm = Math.round(targetPm / gaugePlacePm) * gaugePlacePm;
  // A gauge of 0.005 stops at its own steps; one marked in the other unit has none in this one.
  const inStepsOf = stepPm % placePm === 0 ? stepPm : placePm;
  const largestPm = Math.floor(noLargerPm / inStepsOf) * inStepsOf;
  const smallestPm = Math.ceil(noSmallerPm / inStepsOf) * inStepsOf;
  const isWithin = targetPm >= noSmallerPm && targetPm <= noLargerPm;
  const sizePm = isWithin ? Math.min(Math.max(targetPm, smallestPm), largestPm) : targetPm;
  const figure = (pm: number, places = decimals) =>
    formatLength(pm, { ...shown, decimals: places });
  return {
    size:
      asReadPm <= largestPm && asReadPm >= smallestPm ? figure(asReadPm, ofGauge) : figure(sizePm),
    largest: figure(largestPm),
    smallest: figure(smallestPm),
  };
}

/** Crossed limits are not proved by any place. */
function stepFor(bandPm: number, resolutionPm: number): number {
  if (bandPm < 0 || bandPm >= 2 * resolutionPm) return resolutionPm;
  const tenths = [10, 100, 1000].map((parts) => resolutionPm / parts);
  return tenths.find((stepPm) => bandPm >= stepPm) ?? tenths.at(-1)!;
}
