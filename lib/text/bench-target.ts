import type { FeatureKind } from '@/lib/schema/feature-kinds';
import { shownLength, type Shown } from './shown-size';
import { targetFigures, type TargetSizes } from './target-figures';

/** What a piece is to be made to, for one sentence. Lengths in pm. */
export type TargetFacts = TargetSizes & {
  mark: string;
  partner: string;
  provable: boolean;
  leftPm: number | null;
  /** Of the feature that is made. */
  kind: FeatureKind;
  resolutionPm: number;
};

export type TargetWords = {
  /** "Make P7 to L7" */
  title: string;
  size: string;
  /** "No larger than 18.001, no smaller than 17.999." */
  between: string;
  /** "17.999 to 18.001", where there is no room for more. */
  brief: string;
  /** "0.086 left to turn.", of a bore "to bore"; empty while nothing was measured. */
  left: string;
};

/** What to make a piece to. Working limits are rounded inward, never outward. */
export function targetWords(facts: TargetFacts, shown: Shown): TargetWords {
  const { mark, partner, resolutionPm, leftPm } = facts;
  const figure = (pm: number) => shownLength(pm, resolutionPm, shown);
  const { size, largest, smallest } = targetFigures(facts, resolutionPm, shown);
  return {
    title: `Make ${mark} to ${partner}`,
    size,
    between: facts.provable
      ? `No larger than ${largest}, no smaller than ${smallest}.`
      : 'These gauges cannot prove the fit: measure the partner finer.',
    brief: facts.provable ? `${smallest} to ${largest}` : 'these gauges cannot prove it',
    left: leftPm === null ? '' : leftWords(leftPm, facts.kind, figure),
  };
}

/** Care, in one sentence. */
export const spindleWords = 'Spindle stopped before you measure.';

/** A cut the device could not keep. */
export const cutTroubleWords =
  'The cut was not noted, and nothing was changed. Try it again before you log the new size.';

function leftWords(leftPm: number, kind: FeatureKind, figure: (pm: number) => string): string {
  const act = kind === 'outside' ? 'turn' : kind === 'bore' ? 'bore' : 'take off';
  return leftPm > 0 ? `${figure(leftPm)} left to ${act}.` : `Nothing left to ${act}.`;
}
