import type { DecimalMark, LengthUnit } from '@/lib/units/picometres';
import { stepWords, wantedFigure } from './fit-words';
import { scaleWords } from './scale';
import { shownSize } from './shown-size';
import { usualResolutionPm } from './usual-resolution';

type Side = { title: string; feature: string };
type Facts = {
  unit: LengthUnit;
  decimal: DecimalMark;
  aimPm: number;
  /** What the figures of the pairs count in, pm; the usual step where it is left out. */
  stepPm?: number;
  internal: Side;
  external: Side;
  ties: readonly unknown[];
  toMake: readonly unknown[];
};

/** The words beside the two rules: both parts, the unit once, how far the second is slid, what the figures count. */
export function fitRulesTitles(facts: Facts) {
  const { internal, external, aimPm, unit } = facts;
  return {
    internal: { title: internal.title, subtitle: `${internal.feature}, ${unit}` },
    external: {
      title: external.title,
      subtitle: `slid ${wantedFigure(aimPm, facts, facts.stepPm)}`,
    },
    between: stepWords(facts, facts.stepPm),
  };
}

/** The two rules read aloud; the table beside them says each size. */
export function fitRulesSentence(facts: Facts, timesFullSize: number): string {
  const { internal, external, aimPm, ties, toMake } = facts;
  const pairs = ties.length === 1 ? '1 pair' : `${ties.length} pairs`;
  return (
    `${internal.title} above, ${external.title.toLowerCase()} below, ${scaleWords(timesFullSize)}, ` +
    `the lower rule slid ${wantedFigure(aimPm, facts, facts.stepPm)} so that a pair at the aim stands plumb. ` +
    `${pairs}, ${toMake.length} to make.`
  );
}

type Density = {
  /** Measured pieces of both sides, those to make, and how many carry their mark. */
  pieces: number;
  toMake: number;
  marked: number;
  /** The least and the most expanded uncertainty among them, pm. */
  leastPm: number;
  mostPm: number;
  resolutionPm: number | null;
};

/** Under two rules with too many pieces to mark each. */
export function denseWords(
  { pieces, toMake, marked, leastPm, mostPm, resolutionPm }: Density,
  shown: { unit: LengthUnit; decimal: DecimalMark },
): string {
  const stepPm = usualResolutionPm(resolutionPm, shown.unit);
  const doubt = (pm: number) =>
    shownSize({ valuePm: 0, expandedPm: Math.max(1, pm) }, stepPm, shown).plusMinus;
  const known =
    pieces === 0
      ? ''
      : doubt(leastPm) === doubt(mostPm)
        ? `, known to ± ${doubt(mostPm)}`
        : `, known to ± ${doubt(leastPm)} to ${doubt(mostPm)}`;
  const hollow = toMake === 0 ? '' : ' A hollow one is to make.';
  return (
    `Each block is a piece at its own size${known}.${hollow} ` +
    `${marked} of ${pieces + toMake} carry their mark: without a partner, outside or unsure, smallest and largest. The table names all.`
  );
}
