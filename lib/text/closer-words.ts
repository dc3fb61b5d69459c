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
      least: { ordinal: number; sizePm: number };
      most: { ordinal: number; sizePm: number };
    } | null;
    lowerPm: number | null;
    upperPm: number | null;
  },
  shown: Shown,
): string {
  const { prefix, from, to, last, seen } = facts;
  const figure = (pm: number) => shownLength(pm, chartStepPm[shown.unit], shown);
  const stretch = `${prefix}${from} to ${prefix}${to} of ${last}`;
  if (seen === null) return `${stretch}. Nothing measured there.`;
  const { count, least, most } = seen;
  const limits = [
    facts.lowerPm === null ? '' : `no smaller than ${figure(facts.lowerPm)}`,
    facts.upperPm === null ? '' : `no larger than ${figure(facts.upperPm)}`,
  ].filter(Boolean);
  const within = limits.length === 0 ? '' : ` Limits: ${limits.join(', ')}.`;
  return `${stretch}, ${count} measured. Smallest ${figure(least.sizePm)} at ${prefix}${least.ordinal}, largest ${figure(most.sizePm)} at ${prefix}${most.ordinal}.${within}`;
}

/** Said in the place of the closer look at a run of several features alike. */
export const closerOneWords =
  'This run charts several features together. The closer look is of one feature: start a run of it alone.';
