import { chartStepPm } from './chart-step';
import { shownLength, type Shown } from './shown-size';

/** What a stretch of a run shows, in a sentence; ordinals are whole pieces. */
export function closerWords(
  facts: {
    prefix: string;
    from: number;
    to: number;
    last: number;
    seen: {
      count: number;
      least: { ordinal: number; sizePm: number; mark?: string };
      most: { ordinal: number; sizePm: number; mark?: string };
    } | null;
    lowerPm: number | null;
    upperPm: number | null;
    /** Several features alike: turns, each charted from its own nominal. */
    alike?: boolean;
  },
  shown: Shown,
): string {
  const { prefix, from, to, last, seen, alike = false } = facts;
  const figure = (pm: number) =>
    shownLength(pm, chartStepPm[shown.unit], shown, alike ? 'always' : 'needed');
  const stretch = alike
    ? `Turns ${from} to ${to} of ${last}`
    : `${prefix}${from} to ${prefix}${to} of ${last}`;
  if (seen === null) return `${stretch}. Nothing measured there.`;
  const { count, least, most } = seen;
  const at = ({ ordinal, sizePm, mark }: typeof least) =>
    `${figure(sizePm)} at ${mark ?? `${prefix}${ordinal}`}`;
  const limits = [
    facts.lowerPm === null ? '' : `no smaller than ${figure(facts.lowerPm)}`,
    facts.upperPm === null ? '' : `no larger than ${figure(facts.upperPm)}`,
  ].filter(Boolean);
  const within = limits.length === 0 ? '' : ` Limits: ${limits.join(', ')}.`;
  const ownNominal = alike ? ' Each from its own nominal.' : '';
  return `${stretch}, ${count} measured. Smallest ${at(least)}, largest ${at(most)}.${within}${ownNominal}`;
}
