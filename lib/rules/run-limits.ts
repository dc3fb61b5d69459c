import type { Feature } from '@/lib/schema/feature';
import { drawnLimits } from './feature-limits';
import type { Limits } from './verdict';

/**
 * The limits a run is charted with: of one feature those of its drawing; of several alike their deviations, open
 * where these are not the same.
 */
export function runLimits(features: readonly Feature[]): { limits: Limits; limitsDiffer: boolean } {
  const [first, ...rest] = features;
  if (rest.length === 0) return { limits: drawnLimits(first!), limitsDiffer: false };
  const { upperPm, lowerPm } = first!;
  const limitsDiffer = rest.some((one) => one.upperPm !== upperPm || one.lowerPm !== lowerPm);
  return {
    limits: limitsDiffer ? { lowerPm: null, upperPm: null } : { lowerPm, upperPm },
    limitsDiffer,
  };
}
