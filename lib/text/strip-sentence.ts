import { shownLimit } from './shown-limit';
import { shownLength, shownSize } from './shown-size';
import type { StripFacts } from './strip-facts';
import { partnerSize } from './strip-labels';
import { usualResolutionPm } from './usual-resolution';
import { verdictWords } from './verdict';

/**
 * A size strip read aloud, in the order it is drawn: name, size, verdict, limits, partner, what is off it.
 *
 * @example
 * // 'P5 outside. Size so far 17.999 plus or minus 0.001 millimetres, from 4 readings. Inside.
 * // Limits 17.996 to 18.000, aim 17.998. L5 bore 18.008.'
 */
export function stripSentence(name: string, facts: StripFacts): string {
  return [
    name,
    sizeWords(facts),
    verdictOf(facts),
    limitWords(facts),
    partnerWords(facts),
    cutWords(facts),
    lastReadingWords(facts),
    setAsideWords(facts),
  ]
    .filter((part) => part !== '')
    .map((part) => `${part}.`)
    .join(' ');
}

function sizeWords(facts: StripFacts): string {
  const readings = facts.readings ?? [];
  const counted = readings.filter(({ state }) => state === 'counted');
  const size = facts.size ?? null;
  const unit = unitWord(facts);
  if (size !== null) {
    const { value, plusMinus } = bothOf(size, facts);
    const from = counted.length > 0 ? `, from ${count(counted.length, 'reading')}` : '';
    return `Size so far ${value} plus or minus ${plusMinus} ${unit}${from}`;
  }
  if (readings.length === 0) return 'No reading yet';
  if (counted.length === 0) return 'No size yet';
  const last = counted.find((reading) => reading.last === true) ?? counted.at(-1)!;
  const value = limit(last.valuePm, facts);
  return counted.length === 1
    ? `One reading, ${value} ${unit}, no size yet`
    : `${counted.length} readings, the last ${value} ${unit}, no size yet`;
}

function verdictOf(facts: StripFacts): string {
  const size = facts.size ?? null;
  if (size === null || size.state === null) return '';
  const { lowerPm, upperPm } = facts;
  const overTopPm = upperPm === null ? -Infinity : size.valuePm - upperPm;
  const underBottomPm = lowerPm === null ? -Infinity : lowerPm - size.valuePm;
  const side = overTopPm >= underBottomPm ? 'top' : 'bottom';
  const beyondPm = Math.max(0, overTopPm, underBottomPm);
  const limitPm = side === 'top' ? upperPm : lowerPm;
  return verdictWords({ state: size.state, side, beyondPm, limitPm }, facts);
}

function limitWords(facts: StripFacts): string {
  const { lowerPm, upperPm } = facts;
  const aimPm = facts.aimPm ?? null;
  const aim = aimPm === null ? '' : `aim ${limit(aimPm, facts)}`;
  const limits =
    lowerPm !== null && upperPm !== null
      ? `Limits ${limit(lowerPm, facts)} to ${limit(upperPm, facts)}`
      : upperPm !== null
        ? `No larger than ${limit(upperPm, facts)}`
        : lowerPm !== null
          ? `No smaller than ${limit(lowerPm, facts)}`
          : 'No limits';
  return aim === '' ? limits : `${limits}, ${aim}`;
}

function partnerWords(facts: StripFacts): string {
  const partner = facts.partner ?? null;
  if (partner === null) return '';
  const { mark, name, sizePm, lowerPm, upperPm } = partner;
  if (sizePm !== null) return `${mark} ${name} ${partnerSize(partner, sizePm, facts)}`;
  const limits =
    lowerPm !== null && upperPm !== null
      ? `, limits ${limit(lowerPm, facts)} to ${limit(upperPm, facts)}`
      : '';
  return `${mark} ${name} not measured${limits}`;
}

function cutWords(facts: StripFacts): string {
  const parts: string[] = [];
  if (facts.stopAt) parts.push(`turn to ${limit(facts.stopAt.valuePm, facts)}`);
  if (facts.expected) {
    const { value, plusMinus } = bothOf(facts.expected, facts);
    parts.push(`after this cut ${value} plus or minus ${plusMinus} expected`);
  }
  const words = parts.join(', ');
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** Only where it is held or beyond a limit: otherwise the size says it. */
function lastReadingWords(facts: StripFacts): string {
  const last = (facts.readings ?? []).find((reading) => reading.last === true);
  if (last === undefined || last.state === 'struck') return '';
  const { lowerPm, upperPm } = facts;
  const beyond =
    upperPm !== null && last.valuePm > upperPm
      ? `, ${length(last.valuePm - upperPm, facts)} over the upper limit`
      : lowerPm !== null && last.valuePm < lowerPm
        ? `, ${length(lowerPm - last.valuePm, facts)} under the lower limit`
        : '';
  if (last.state === 'counted' && beyond === '') return '';
  const held = last.state === 'held' ? ', held, not counted' : '';
  return `Last reading ${limit(last.valuePm, facts)}${beyond}${held}`;
}

/** Held readings but the last, which has its own words, and struck ones. */
function setAsideWords(facts: StripFacts): string {
  const readings = facts.readings ?? [];
  const held = readings.filter(({ state, last }) => state === 'held' && last !== true).length;
  const struck = readings.filter(({ state }) => state === 'struck').length;
  return [
    held > 0 ? `${count(held, 'reading')} held` : '',
    struck > 0 ? `${count(struck, 'reading')} struck out` : '',
  ]
    .filter((part) => part !== '')
    .join(', ');
}

function count(n: number, thing: string): string {
  return `${n} ${thing}${n === 1 ? '' : 's'}`;
}

function unitWord({ unit }: StripFacts): string {
  return unit === 'mm' ? 'millimetres' : 'inches';
}

function stepPm(facts: StripFacts): number {
  return usualResolutionPm(facts.resolutionPm, facts.unit);
}

function length(pm: number, facts: StripFacts): string {
  return shownLength(Math.round(pm), stepPm(facts), facts);
}

/** Limits and readings: a typed reading is never shown as another one. */
function limit(pm: number, facts: StripFacts): string {
  return shownLimit(pm, stepPm(facts), facts);
}

/** A size whose doubt is nothing at all is shown to the gauge's place. */
function bothOf(size: { valuePm: number; expandedPm: number }, facts: StripFacts) {
  if (size.expandedPm > 0) return shownSize(size, stepPm(facts), facts);
  return { value: length(size.valuePm, facts), plusMinus: length(0, facts) };
}
