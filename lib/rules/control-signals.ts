import { patternRules, type PatternRules } from '@/lib/maths/control/pattern-rules';
import { mean } from '@/lib/maths/statistics/mean';
import type { PatternRule, Run } from '@/lib/schema/run';
import type { ControlGroup } from './control-groups';
import type { ControlLimits } from './control-limits';
import type { ControlPoint, ControlTracks } from './control-tracks';

/** A point at which a control chart says that something has changed. */
export type ControlSignal = {
  /** `main`: pieces, means, averages, sums; `spread`: ranges or s. */
  track: 'main' | 'spread';
  ordinal: number;
  mark: string;
  /** The pattern that ends here, or `limit` for an average, a sum or a range beyond its limit. */
  rule: PatternRule | 'limit';
  /** Above or below the middle; null where the pattern has no side. */
  side: 'above' | 'below' | null;
  /** For a sum: where the change is thought to have begun, and the size since, mm off the nominal. */
  change: { beganMark: string; meanMm: number } | null;
};

const listOf: Record<PatternRule, keyof PatternRules> = {
  'beyond three sigma': 'beyondThreeSigma',
  'nine on one side': 'nineOnOneSide',
  'six rising or falling': 'sixRisingOrFalling',
  'fourteen alternating': 'fourteenAlternating',
  'two of three beyond two sigma': 'twoOfThreeBeyondTwoSigma',
  'four of five beyond one sigma': 'fourOfFiveBeyondOneSigma',
  'fifteen within one sigma': 'fifteenWithinOneSigma',
  'eight beyond one sigma': 'eightBeyondOneSigma',
};

/** Patterns that say nothing of above or below. */
const sideless: ReadonlySet<PatternRule> = new Set([
  'fourteen alternating',
  'fifteen within one sigma',
  'eight beyond one sigma',
]);

/**
 * The signals of a control chart, in the order made: the pattern rules that are switched on for pieces and
 * means, the limit alone for averages, sums and ranges. A pattern never goes over an event that starts the
 * drift afresh. Each is named at the point where it is complete.
 */
export function controlSignals(
  run: Pick<Run, 'control' | 'patterns'>,
  groups: readonly ControlGroup[],
  limits: ControlLimits,
  tracks: ControlTracks,
): ControlSignal[] {
  const spread = beyond(tracks.spread ?? [], 'spread');
  const main =
    run.control === 'ewma'
      ? beyond(tracks.main, 'main')
      : run.control === 'cusum'
        ? ofSums(groups, tracks)
        : patterns(run.patterns, groups, limits);
  return [...main, ...spread].sort((a, b) => a.ordinal - b.ordinal);
}

function beyond(points: readonly ControlPoint[], track: ControlSignal['track']): ControlSignal[] {
  return points.flatMap(({ ordinal, mark, valueMm, lowerMm, upperMm }) => {
    if (valueMm <= upperMm && valueMm >= lowerMm) return [];
    const side = valueMm > upperMm ? 'above' : 'below';
    return [{ track, ordinal, mark, rule: 'limit', side, change: null }];
  });
}

/** Only the first of each stretch: the sums go on growing until the cause is mended. */
function ofSums(groups: readonly ControlGroup[], { sums }: ControlTracks): ControlSignal[] {
  return sums.flatMap(({ first, chart }): ControlSignal[] => {
    const { signal } = chart;
    if (signal === undefined) return [];
    const [group, began] = [groups[first + signal.index]!, groups[first + signal.beganAt]!];
    return [
      {
        track: 'main',
        ordinal: group.to,
        mark: group.mark,
        rule: 'limit',
        side: signal.side === 'upper' ? 'above' : 'below',
        change: { beganMark: began.mark, meanMm: signal.meanNow + group.lineMm },
      },
    ];
  });
}

function patterns(
  rules: readonly PatternRule[],
  groups: readonly ControlGroup[],
  limits: ControlLimits,
): ControlSignal[] {
  const found: ControlSignal[] = [];
  let from = 0;
  while (from < groups.length) {
    let to = from + 1;
    while (to < groups.length && groups[to]!.stretch === groups[from]!.stretch) to += 1;
    const own = groups.slice(from, to);
    // In standard deviations, so that groups of different sizes stand on one scale.
    const off = own.map(
      ({ values }) => (mean(values) - limits.centreMm) / limits.sigmaOf(values.length),
    );
    const all = patternRules(off, 0, 1);
    for (const rule of rules) {
      for (const i of all[listOf[rule]]) {
        const { to: ordinal, mark } = own[i]!;
        found.push({
          track: 'main',
          ordinal,
          mark,
          rule,
          side: sideOf(rule, off, i),
          change: null,
        });
      }
    }
    from = to;
  }
  return found;
}

function sideOf(rule: PatternRule, off: readonly number[], i: number): ControlSignal['side'] {
  if (sideless.has(rule)) return null;
  if (rule === 'six rising or falling') return off[i]! > off[i - 1]! ? 'above' : 'below';
  return off[i]! > 0 ? 'above' : 'below';
}
