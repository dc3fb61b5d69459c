import type { LengthUnit } from '@/lib/units/picometres';
import { exactFigure } from './exact-figure';
import type { Shown } from './shown-size';
import { unitBeside } from './unit-beside';

/** How an offset and what goes on the dial are labelled; a length has no radius. */
export function offsetLabels(facts: {
  onDiameter: boolean;
  dial: 'radius' | 'diameter';
  onDialPm: number;
}): { offset: string; dial: string } {
  const way = facts.onDialPm < 0 ? 'smaller' : 'larger';
  if (!facts.onDiameter) return { offset: 'Offset, on the size', dial: `On the dial, ${way}` };
  const dial = facts.dial === 'radius' ? 'Radius' : 'Diameter';
  return { offset: 'Offset, on diameter', dial: `${dial} dial, ${way}` };
}

/**
 * The figures of an offset as they are put in: in the unit the dial is marked in, which is named where it is not
 * the one shown.
 */
export function offsetFigures(
  offset: { onDiameterPm: number; onDialPm: number },
  dialUnit: LengthUnit,
  shown: Shown,
): { offset: string; dial: string } {
  const named = unitBeside(dialUnit, shown);
  const figure = (pm: number) =>
    `${exactFigure(Math.abs(pm), { ...shown, unit: dialUnit }, dialUnit === 'mm' ? 3 : 4)}${named}`;
  const sign = offset.onDiameterPm < 0 ? '\u2212' : '+';
  return { offset: `${sign}${figure(offset.onDiameterPm)}`, dial: figure(offset.onDialPm) };
}

/** Where the next piece comes out once an offset is in. */
export function thenWords(mark: string, size: string): string {
  return `Then ${mark} comes out near ${size}: an estimate.`;
}

/** Said where the division of a dial is typed as nothing. */
export const noDivisionWords = 'One division is more than nothing.';
