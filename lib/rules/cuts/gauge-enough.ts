import { gaugeFitness } from '@/lib/maths/gauge/gauge-fitness';
import { mmFromPm } from '@/lib/units/picometres';
import type { Size } from '../size';

/** How much wider a band is than the doubt of a size in it: 4 is a band four times the plus-and-minus. */
export type GaugeEnough = { ratio: number; enough: boolean; gaugeId: string };

/**
 * Whether the gauge is good enough for a band (`gaugeFitness`): tolerance to expanded uncertainty of 4 to 1
 * or more. The size is the piece's own, or its partner's while the piece is not measured. Null where the
 * doubt is nothing, so that there is no ratio to give.
 */
export function gaugeEnough(
  size: Pick<Size, 'expandedPm' | 'gaugeId'>,
  limits: { lowerPm: number; upperPm: number },
  resolutionPm: number,
): GaugeEnough | null {
  if (size.expandedPm <= 0) return null;
  const { fitness, uncertaintyShare } = gaugeFitness({
    resolutionMm: mmFromPm(resolutionPm),
    uExpandedMm: mmFromPm(size.expandedPm),
    toleranceMm: mmFromPm(limits.upperPm - limits.lowerPm),
  });
  return { ratio: 1 / uncertaintyShare, enough: fitness !== 'unfit', gaugeId: size.gaugeId };
}
