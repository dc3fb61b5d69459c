import { decimalsForResolution } from '@/lib/units/decimals-for-resolution';
import { pmPerUnit, type LengthUnit } from '@/lib/units/picometres';
import { usualResolutionPm } from './usual-resolution';

/**
 * The step a figure that a person has given is said in, pm: `stepPm`, or the next place where the figure is
 * exact there and not before. An aim of 0.00055 in is then never read as 0.0006; one of 0.008 mm, which
 * has no end in inches, is said no finer for that. No finer than one place past a usual micrometer's.
 */
export function givenStep(pm: number, stepPm: number, unit: LengthUnit): number {
  const decimals = decimalsForResolution(stepPm, unit);
  const placePm = (places: number) => pmPerUnit(unit) / 10 ** places;
  const isExact = (places: number) => pm % placePm(places) === 0;
  const isUsual = stepPm >= usualResolutionPm(null, unit);
  return isUsual && !isExact(decimals) && isExact(decimals + 1) ? placePm(decimals + 1) : stepPm;
}
