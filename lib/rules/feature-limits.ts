import type { Feature } from '@/lib/schema/feature';
import type { Limits } from './verdict';

/** Limits of a feature as the drawing gives them: nominal plus deviations, pm. */
export function drawnLimits(feature: Pick<Feature, 'nominalPm' | 'upperPm' | 'lowerPm'>): Limits {
  const { nominalPm, upperPm, lowerPm } = feature;
  return {
    lowerPm: lowerPm === null ? null : nominalPm + lowerPm,
    upperPm: upperPm === null ? null : nominalPm + upperPm,
  };
}

/** Whether the drawing leaves both sides open, so that only a fit can say the limits. */
export function isOpen(limits: Limits): boolean {
  return limits.lowerPm === null && limits.upperPm === null;
}
