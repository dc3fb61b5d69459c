import type { DecimalMark, LengthUnit } from '@/lib/units/picometres';
import { clearanceFigure, stepWords } from './fit-words';
import { scaleWords } from './scale';

type Side = { title: string; feature: string };
type Facts = {
  unit: LengthUnit;
  decimal: DecimalMark;
  aimPm: number;
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
    external: { title: external.title, subtitle: `slid ${clearanceFigure(aimPm, facts)}` },
    between: stepWords(facts),
  };
}

/** The two rules read aloud; the table beside them says each size. */
export function fitRulesSentence(facts: Facts, timesFullSize: number): string {
  const { internal, external, aimPm, ties, toMake } = facts;
  const pairs = ties.length === 1 ? '1 pair' : `${ties.length} pairs`;
  return (
    `${internal.title} above, ${external.title.toLowerCase()} below, ${scaleWords(timesFullSize)}, ` +
    `the lower rule slid ${clearanceFigure(aimPm, facts)} so that a pair at the aim stands plumb. ` +
    `${pairs}, ${toMake.length} to make.`
  );
}
