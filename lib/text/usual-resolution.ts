import { pmPerMm, pmPerThou, type LengthUnit } from '@/lib/units/picometres';

/** The step of the gauge, or of a usual micrometer in this unit while no gauge is chosen. */
export function usualResolutionPm(resolutionPm: number | null, unit: LengthUnit): number {
  return resolutionPm ?? (unit === 'mm' ? pmPerMm / 1000 : pmPerThou / 10);
}
