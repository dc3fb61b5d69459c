import type { JobSheet } from '@/lib/schema/sheet';
import type { FitView } from '../fit-view';
import type { Target } from '../target';
import { fitTemperatures } from './fit-temperatures';
import { hotCold } from './hot-cold';
import { materialOf } from './material-of';

/** What a piece made to its target would have hot. Estimates; lengths in pm, temperatures in degrees C. */
export type TargetHeat = {
  /** Both pieces at the hottest they are together. */
  warm: { temperatureC: number; clearancePm: number };
  /** The bad moment: the inner piece hot, the outer one still cold. */
  starting: { outerC: number; innerC: number; clearancePm: number };
  /** How much hotter than the outer piece the inner may be before they touch; null where that is out of reach. */
  touchesHotterByC: number | null;
  /** The temperatures are only to begin with. */
  isGuess: boolean;
};

/** The clearance hot of a target and its measured partner (`hotCold`); null while a material is not known. */
export function targetHeat(
  { parts, materials }: Pick<JobSheet, 'parts' | 'materials'>,
  { fit, internalFeature, externalFeature }: FitView,
  { make, targetPm, partnerSize }: Pick<Target, 'make' | 'targetPm' | 'partnerSize'>,
): TargetHeat | null {
  const of = (partId: string) =>
    materialOf(parts.find(({ id }) => id === partId)?.material ?? '', materials)?.material;
  const [outer, inner] = [of(internalFeature.partId), of(externalFeature.partId)];
  if (outer === undefined || inner === undefined) return null;
  const partnerPm = partnerSize.valuePm;
  const [borePm, shaftPm] = make === 'external' ? [partnerPm, targetPm] : [targetPm, partnerPm];
  const { lowest, highest, outer: outerC, inner: innerC, isGuess } = fitTemperatures(fit);
  const hot = hotCold({
    bore: { sizePm: borePm, material: outer },
    shaft: { sizePm: shaftPm, material: inner },
    soakedC: { lowest: Math.min(lowest, highest), highest },
    badC: { outer: outerC, inner: innerC },
  });
  const warm = hot.soaked.at(-1)!;
  const touches = hot.bad.clearancePm < 0 || warm.clearancePm < 0;
  return {
    warm,
    starting: hot.bad,
    touchesHotterByC: touches ? null : hot.touchesHotterByC,
    isGuess,
  };
}
