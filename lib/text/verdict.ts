import { shownLength, type Shown } from './shown-size';
import { shownLimit } from './shown-limit';
import { usualResolutionPm } from './usual-resolution';

/** Every state a verdict mark has: those of a judged size, and those of a place without one. */
export type VerdictState =
  'inside' | 'near' | 'unsure' | 'out' | 'to cut' | 'held' | 'struck' | 'to make' | 'none';

/** The limit a size is near, astride or beyond: top is large. */
export type VerdictSide = 'top' | 'bottom' | null;

export type VerdictFacts = {
  state: VerdictState;
  side?: VerdictSide;
  /** How far beyond that limit, pm. */
  beyondPm?: number;
  /** That limit, pm; an unsure verdict names it. */
  limitPm?: number | null;
};

/** How figures are shown, and the step of the gauge they came from. */
export type ShownWithStep = Shown & { resolutionPm: number | null };

/**
 * A verdict in words, without a full stop.
 *
 * "Inside" is never shortened: "in" beside a figure means inches.
 *
 * @example
 * verdictWords({ state: 'out', side: 'top', beyondPm: 3_000_000 }, { unit: 'mm', decimal: '.', resolutionPm: 1_000_000 });
 * // 'Out, 0.003 large'
 */
export function verdictWords(facts: VerdictFacts, shown: ShownWithStep): string {
  const stepPm = usualResolutionPm(shown.resolutionPm, shown.unit);
  const { state, side = null, beyondPm = 0, limitPm = null } = facts;
  switch (state) {
    case 'inside':
      return 'Inside';
    case 'near':
      return side === 'bottom' ? 'Near the bottom' : 'Near the top';
    case 'out':
      return `Out, ${shownAmount(beyondPm, stepPm, shown)} ${side === 'bottom' ? 'small' : 'large'}`;
    case 'unsure':
      if (limitPm === null) return 'Unsure, too near a limit to say';
      return `Unsure, too near ${shownLimit(limitPm, stepPm, shown)} to say`;
    case 'to cut':
      return `Still to cut, ${shownAmount(beyondPm, stepPm, shown)} ${side === 'bottom' ? 'under' : 'over'}`;
    case 'held':
      return 'Held';
    case 'struck':
      return 'Struck out';
    case 'to make':
      return 'To make';
    case 'none':
      return 'No reading';
  }
}

/** An amount to the gauge's place; one that would round to nothing is shown as one step. */
function shownAmount(pm: number, stepPm: number, shown: Shown): string {
  return shownLength(Math.max(Math.round(pm), pm > 0 ? stepPm : 0), stepPm, shown);
}
