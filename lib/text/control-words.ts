import type { ControlKind, PatternRule, RunEvent } from '@/lib/schema/run';
import { capital } from './capital';
import { chartStepPm } from './chart-step';
import { countWord } from './drift-words';
import { shownLength, type Shown } from './shown-size';

/** What a control chart is called where it is chosen. */
export const controlNames: Record<ControlKind, string> = {
  none: 'None',
  'single pieces': 'Single pieces',
  'mean and range': 'Means and ranges',
  'mean and s': 'Means and s',
  ewma: 'Weighted average (EWMA)',
  cusum: 'Sums (CUSUM)',
};

/** What the two plots of a control chart show. */
export function trackNames(
  control: ControlKind,
  grouped: boolean,
): { main: string; spread: string } {
  switch (control) {
    case 'mean and range':
      return { main: 'means', spread: 'ranges' };
    case 'mean and s':
      return { main: 'means', spread: 's of each group' };
    case 'ewma':
      return { main: grouped ? 'weighted average of means' : 'weighted average', spread: '' };
    case 'cusum':
      return { main: grouped ? 'sums of means' : 'sums', spread: '' };
    default:
      return { main: 'single pieces', spread: 'moving ranges' };
  }
}

/** The pattern rules as switches, in the order of ISO 7870-2 and Nelson. */
export const patternNames: Record<PatternRule, string> = {
  'beyond three sigma': 'One beyond three sigma',
  'nine on one side': 'Nine in a row on one side',
  'six rising or falling': 'Six in a row rising or falling',
  'fourteen alternating': 'Fourteen in a row up and down',
  'two of three beyond two sigma': 'Two of three beyond two sigma',
  'four of five beyond one sigma': 'Four of five beyond one sigma',
  'fifteen within one sigma': 'Fifteen in a row within one sigma',
  'eight beyond one sigma': 'Eight in a row beyond one sigma',
};

/** What a control chart is, as far as words need it. */
export type ControlFacts = {
  control: ControlKind;
  grouped: boolean;
  follow: 'flat' | 'line';
  groupOf: 'pieces' | 'readings';
  together: number;
  base: { count: number };
  baseMarks: [first: string, last: string];
  trial: boolean;
};

/** How many limits are settled by: textbooks ask for 20 to 25. */
const settled = 20;

/** Where the limits come from, and whether they may be trusted yet; `each` is what moves along the axis. */
export function limitsWords(facts: ControlFacts, each: 'piece' | 'turn'): string {
  const { base, baseMarks, grouped, trial, follow } = facts;
  const what = grouped ? (base.count === 1 ? 'group' : 'groups') : `${each}s`;
  const from = `from ${base.count} ${what}, ${baseMarks[0]} to ${baseMarks[1]}`;
  const line = follow === 'line' ? ' They follow the drift line.' : '';
  if (!trial) return `Limits ${from}.${line}`;
  const lack = settled - base.count;
  return `Trial limits, ${from}: ${countWord(lack)} more ${lack === 1 ? 'settles' : 'settle'} them (Montgomery, Statistical Quality Control, asks for 20 to 25).${line}`;
}

/** Readings of one piece as a group: what their limits are worth. */
export const withinPieceWords =
  'The groups are readings of one piece: they tell form and gauge, not the machine, so the limits of the means come out narrow.';

/** Why there is no control chart, and what would make one. */
export function noControlWords(facts: {
  reason: 'few pieces' | 'no groups' | 'short stretch' | 'no line' | 'no scatter';
  pieces: number;
  grouped: boolean;
}): string {
  const { reason, pieces, grouped } = facts;
  switch (reason) {
    case 'few pieces':
      return `${capital(countWord(pieces))} measured: too few for limits. Five are wanted.`;
    case 'no groups':
      return 'Means want groups: say how many are taken at a time, two or more.';
    case 'short stretch':
      return grouped
        ? 'Fewer than two whole groups in the stretch for the limits: make it longer.'
        : 'Fewer than five pieces in the stretch for the limits: make it longer.';
    case 'no line':
      return 'Fewer than five pieces since the last event in the stretch for the limits: no line to follow yet.';
    case 'no scatter':
      return 'Every piece reads the same: the gauge shows no scatter to make limits of.';
  }
}

/** A signal, as far as its sentence needs it. */
export type SignalFacts = {
  first: {
    track: 'main' | 'spread';
    mark: string;
    rule: PatternRule | 'limit';
    side: 'above' | 'below' | null;
    change: { beganMark: string; meanPm: number } | null;
  };
  last: { mark: string };
  points: number;
};

/** A signal in a sentence: where, what, and what it may mean. */
export function signalWords(
  { first, last, points }: SignalFacts,
  control: ControlKind,
  shown: Shown,
): string {
  const where = points === 1 ? first.mark : `${first.mark}, and on to ${last.mark}`;
  return `${where}: ${saidOf(first, control, shown)}`;
}

function saidOf(
  { track, rule, side, change }: SignalFacts['first'],
  control: ControlKind,
  shown: Shown,
): string {
  const other = side === 'above' ? 'above' : 'below';
  if (rule === 'limit') {
    if (track === 'spread') return spreadSays(other, control);
    if (control !== 'cusum' || change === null) {
      return `the weighted average is ${other} its limit. The middle has moved.`;
    }
    const sum = other === 'above' ? 'upper' : 'lower';
    const now = shownLength(Math.round(change.meanPm), chartStepPm[shown.unit], shown);
    return `the ${sum} sum is past its limit. It began about ${change.beganMark}; the middle since is about ${now}.`;
  }
  switch (rule) {
    case 'beyond three sigma':
      return `${other} three sigma. Something happened there.`;
    case 'nine on one side':
      return `nine in a row ${other} the middle. The middle has moved.`;
    case 'six rising or falling':
      return `six in a row ${side === 'above' ? 'rising' : 'falling'}. It drifts.`;
    case 'fourteen alternating':
      return 'fourteen in a row up and down. Two tools, two chucks or two gauges in turn?';
    case 'two of three beyond two sigma':
      return `two of three ${other} two sigma. The middle is moving.`;
    case 'four of five beyond one sigma':
      return `four of five ${other} one sigma. The middle is moving.`;
    case 'fifteen within one sigma':
      return 'fifteen in a row within one sigma. The limits are too wide for these pieces.';
    case 'eight beyond one sigma':
      return 'eight in a row beyond one sigma, none near the middle. Two kinds of piece mixed?';
  }
}

function spreadSays(side: 'above' | 'below', control: ControlKind): string {
  if (control === 'single pieces') return 'too far from the piece before it.';
  const what = control === 'mean and s' ? 's' : 'the range';
  return side === 'above'
    ? `${what} is above its limit. Within this group something changed.`
    : `${what} is below its limit. Pieces too alike: were they all measured?`;
}

const inside: Record<RunEvent['kind'], string> = {
  'insert changed': 'mixes two inserts',
  'offset moved': 'has an offset inside it',
  coolant: 'has a change of coolant inside it',
  'warm-up': 'has a warm-up inside it',
  break: 'has a break inside it',
  're-chucked': 'mixes two chuckings',
  other: 'has an event inside it',
};

/** A group an event falls into. */
export function straddleWords(group: { mark: string; straddles: RunEvent['kind'][] }): string {
  const what = [...new Set(group.straddles)].map((kind) => inside[kind]);
  return `${group.mark} ${what.join(' and ')}: left out of the limits.`;
}

/** A group that lacks a piece or a reading. */
export function shortGroupWords(
  { mark, has, waits }: { mark: string; has: number; waits: boolean },
  together: number,
): string {
  const lacks = together - has;
  if (!waits) return `${mark} has ${has} where ${together} are taken: no point for it.`;
  return `${mark} waits for ${countWord(Math.max(1, lacks))} more.`;
}

/** Pieces of a stretch that is too short for a line the limits could follow. */
export function linelessWords(stretch: { first: string; last: string; count: number }): string {
  const { first, last, count } = stretch;
  const which = first === last ? first : `${first} to ${last}`;
  return `${which}: ${countWord(count)} in a stretch ${count === 1 ? 'is' : 'are'} too few for a line of its own, so no point is drawn yet.`;
}
