import { sizeAtTemperature } from '@/lib/maths/thermal/size-at-temperature';
import { mmFromPm, pmFromMm } from '@/lib/units/picometres';

/** How much of what a piece measures is heat. `excessPm` is above zero where it reads larger than at 20 degrees C. */
export type WarmPiece =
  | { kind: 'not said' }
  /** Its material is not in the table: nothing can be worked out. */
  | { kind: 'not known'; temperatureMilliC: number }
  | { kind: 'go on' | 'wait'; temperatureMilliC: number; excessPm: number };

/**
 * Whether a piece is too warm to be trusted for its last cut: `wait` where its expansion is more than a
 * quarter of the band it has to come into. A quarter is common practice, no source; without a band it is
 * more than the step of the gauge.
 *
 * An estimate: one coefficient, one temperature for the whole piece, the gauge at 20 degrees C.
 */
export function warmPiece(facts: {
  sizePm: number;
  temperatureMilliC: number | null;
  /** Mean coefficient of linear expansion of its material, per degree C; null where it is not known. */
  expansionPerC: number | null;
  /** Width of the band, pm; null where there is none. */
  bandPm: number | null;
  resolutionPm: number;
}): WarmPiece {
  const { sizePm, temperatureMilliC, expansionPerC, bandPm, resolutionPm } = facts;
  if (temperatureMilliC === null) return { kind: 'not said' };
  if (expansionPerC === null) return { kind: 'not known', temperatureMilliC };
  const size20Mm = mmFromPm(sizePm);
  const temperatureC = temperatureMilliC / 1000;
  const warmMm = sizeAtTemperature({ size20Mm, expansionPerC, temperatureC });
  const excessPm = Math.round(pmFromMm(warmMm - size20Mm));
  const mostPm = bandPm === null ? resolutionPm : bandPm / 4;
  return { kind: Math.abs(excessPm) > mostPm ? 'wait' : 'go on', temperatureMilliC, excessPm };
}
