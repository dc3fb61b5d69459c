import { shownLimit } from './shown-limit';
import { shownLength, shownSize, type Shown } from './shown-size';
import type { StripFacts, StripPartner } from './strip-facts';
import { usualResolutionPm } from './usual-resolution';

/** Over the band: "17.996 to 18.000"; the longest wording first, for where there is room. */
export function limitsLabels(facts: StripFacts): string[] {
  const show = limitIn(facts);
  const { lowerPm, upperPm } = facts;
  if (lowerPm !== null && upperPm !== null) {
    const both = `${show(lowerPm)} to ${show(upperPm)}`;
    return facts.drawn === true ? [`as drawn ${both}`, both] : [both];
  }
  if (upperPm !== null) return [`no larger than ${show(upperPm)}`, `to ${show(upperPm)}`];
  if (lowerPm !== null) return [`no smaller than ${show(lowerPm)}`, `from ${show(lowerPm)}`];
  return [];
}

/** Over the partner: "L5 bore 18.008", then without its name, then its mark alone. */
export function partnerLabels(partner: StripPartner, facts: StripFacts): string[] {
  const { mark, name, sizePm } = partner;
  if (sizePm === null) return [`${mark} ${name}, to make`, `${mark}, to make`, mark];
  const size = partnerSize(partner, sizePm, facts);
  return [`${mark} ${name} ${size}`, `${mark} ${size}`, mark];
}

/** Over the size the next cut is expected to give. */
export const expectedLabels = ['after this cut', 'after'];

/** Over the place to stop turning at. */
export function stopLabels(valuePm: number, facts: StripFacts): string[] {
  const value = limitIn(facts)(valuePm);
  return [`turn to ${value}`, value];
}

/** What is off the strip, in words that stand in the place of the numerals. */
export type OffStrip = {
  end: 'over' | 'under';
  valuePm: number;
  /** Where the distance is counted from, pm; null where there is none: then the value itself is said. */
  fromPm: number | null;
  /** Metal still to come off, not a fault. */
  stock: boolean;
};

/** "0.498 mm over", "0.080 mm to go"; without the unit where that stands beside it. */
export function offStripWords(off: OffStrip, facts: StripFacts, withUnit: boolean): string {
  const stepPm = usualResolutionPm(facts.resolutionPm, facts.unit);
  const unit = withUnit ? ` ${facts.unit}` : '';
  const show = (pm: number) => `${shownLength(Math.round(pm), stepPm, facts)}${unit}`;
  if (off.fromPm === null) return show(off.valuePm);
  const distance = show(Math.abs(off.valuePm - off.fromPm));
  return off.stock ? `${distance} to go` : `${distance} ${off.end}`;
}

/** The size of a measured partner, to the place its own doubt allows. */
export function partnerSize(partner: StripPartner, sizePm: number, facts: StripFacts): string {
  const stepPm = usualResolutionPm(facts.resolutionPm, facts.unit);
  const { expandedPm } = partner;
  if (expandedPm === null || expandedPm <= 0) return shownLength(sizePm, stepPm, facts);
  return shownSize({ valuePm: sizePm, expandedPm }, stepPm, facts).value;
}

function limitIn(facts: StripFacts): (pm: number) => string {
  const stepPm = usualResolutionPm(facts.resolutionPm, facts.unit);
  const shown: Shown = { unit: facts.unit, decimal: facts.decimal };
  return (pm) => shownLimit(pm, stepPm, shown);
}
