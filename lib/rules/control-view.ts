import { isTrial } from '@/lib/maths/control/is-trial';
import type { ControlKind } from '@/lib/schema/run';
import { controlGroups, isGrouped, type ControlGroup, type ControlGroups } from './control-groups';
import { controlLimits, type ControlLimits } from './control-limits';
import { controlSignals, type ControlSignal } from './control-signals';
import { controlTracks, type ControlTracks } from './control-tracks';
import type { RunView } from './run-view';

/** Why there is no control chart. */
export type NoControl =
  /** Fewer than five pieces: dots and limits only. */
  | 'few pieces'
  /** Means want groups, and one is taken at a time. */
  | 'no groups'
  /** Fewer than two groups, or five single pieces, in the stretch the limits are worked out from. */
  | 'short stretch'
  /** Limits that follow the line want five pieces of a stretch for it. */
  | 'no line'
  /** Every range is nothing: the gauge shows no scatter at all. */
  | 'no scatter';

export type ControlChart = ControlTracks & {
  kind: 'chart';
  control: Exclude<ControlKind, 'none'>;
  grouped: boolean;
  limits: ControlLimits;
  groups: ControlGroup[];
  /** Turns the limits were worked out from, and how many points (pieces or groups) that was. */
  base: { from: number; to: number; count: number };
  /** Fewer points than settle limits: they are trial limits. */
  trial: boolean;
  signals: ControlSignal[];
  /** Groups with an event inside: drawn, and left out of the limits. */
  straddling: ControlGroup[];
  short: ControlGroups['short'];
  lineless: ControlGroups['lineless'];
};

export type ControlView =
  { kind: 'none' } | { kind: 'too little'; reason: NoControl; pieces: number } | ControlChart;

/** Fewest pieces for any statistics, as of the drift line: common practice, no source. */
const leastPieces = 5;
const leastGroups = 2;

/**
 * The control chart of a run by the choices kept with it: what is plotted, its limits, what they were
 * worked out from, and the signals of the rules that are switched on.
 *
 * Limits come from the groups of the chosen stretch, without those an event falls into; they are trial
 * limits below twenty (`isTrial`). Moving ranges, patterns, averages and sums begin anew at every event
 * that starts the drift afresh. Cost: O(readings).
 */
export function controlView(view: RunView): ControlView {
  const { run } = view;
  if (run.control === 'none') return { kind: 'none' };
  const none = (reason: NoControl): ControlView => ({
    kind: 'too little',
    reason,
    pieces: view.points.length,
  });
  if (view.points.length < leastPieces) return none('few pieces');
  const grouped = isGrouped(view);
  const isPair = run.control === 'mean and range' || run.control === 'mean and s';
  if (isPair && !grouped) return none('no groups');

  const { groups, short, lineless } = controlGroups(view);
  if (groups.length === 0) return none(run.follow === 'line' ? 'no line' : 'short stretch');
  const straddling = groups.filter((group) => group.straddles.length > 0);
  const base = groups.filter((group) => group.inBase && group.straddles.length === 0);
  if (base.length < (grouped ? leastGroups : leastPieces)) {
    return none(run.follow === 'line' && base.length === 0 ? 'no line' : 'short stretch');
  }
  const limits = controlLimits(run.control, base);
  if (limits === null || !(limits.sigmaMm > 0)) return none('no scatter');
  const tracks = controlTracks(run.control, groups, limits, run);
  return {
    kind: 'chart',
    control: run.control,
    grouped,
    limits,
    groups,
    base: { from: base[0]!.from, to: base.at(-1)!.to, count: base.length },
    trial: isTrial(base.length),
    ...tracks,
    signals: controlSignals(run, groups, limits, tracks),
    straddling,
    short,
    lineless,
  };
}
