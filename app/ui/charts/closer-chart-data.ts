import { eventWords } from '@/lib/text/event-words';
import type { RunEvent } from '@/lib/schema/run';
import type { Shown } from '@/lib/text/shown-size';
import { decimalsForResolution } from '@/lib/units/decimals-for-resolution';
import { formatLength } from '@/lib/units/format-length';
import { extremes, firstAt } from './extremes';
import { chartStepPm } from '@/lib/text/chart-step';
import type { Window } from './window';

/** The columns of a run and what it is drawn against. */
export type CloserFacts = {
  ordinals: readonly number[];
  sizesPm: readonly number[];
  nominalPm: number;
  lowerPm: number | null;
  upperPm: number | null;
  events: readonly Pick<RunEvent, 'afterOrdinal' | 'kind' | 'note' | 'at'>[];
  /** The last piece of the batch. */
  last: number;
  /** Several features alike: how each turn is named, and all of it from their own nominals; null for one. */
  marks: readonly string[] | null;
};

/** A stretch of a run as plain figures; heights in steps from the nominal. */
export type CloserChartData = {
  heightTitle: string;
  window: Window;
  /** Heights of the whole run, so that moving along it does not move its scale. */
  range: { min: number; max: number };
  /** What is drawn, in the order made; `outside` is beyond a limit. */
  points: { ordinal: number; height: number; outside: boolean }[];
  /** More pieces than are drawn one by one: only the extremes of each column are. */
  dense: boolean;
  /** A gap of more than this many pieces between two drawn points is left open. */
  gap: number;
  lower: { height: number; label: string } | null;
  upper: { height: number; label: string } | null;
  events: { ordinal: number; title: string }[];
  /** The measured pieces in the window, and the smallest and largest of them; null where there are none. */
  seen: { count: number; least: number; most: number } | null;
};

const air = 0.06;

/** What a stretch of a run shows in so many columns. Pure; no point made up, no extreme left out. */
export function closerChartData(
  facts: CloserFacts,
  window: Window,
  columns: number,
  shown: Shown,
): CloserChartData {
  const { ordinals, sizesPm, nominalPm, lowerPm, upperPm } = facts;
  const stepPm = chartStepPm[shown.unit];
  const decimals = decimalsForResolution(stepPm, shown.unit);
  const label = (pm: number) => formatLength(pm, { ...shown, decimals });
  const sign = facts.marks === null ? ('needed' as const) : ('always' as const);
  const heightOf = (pm: number) => (pm - nominalPm) / stepPm;
  const chosen = extremes(ordinals, sizesPm, window.from, window.to, columns);
  const [start, end] = [firstAt(ordinals, window.from), firstAt(ordinals, window.to)];
  let [least, most] = [start, start];
  for (const index of chosen) {
    if (sizesPm[index]! < sizesPm[least]!) least = index;
    if (sizesPm[index]! > sizesPm[most]!) most = index;
  }
  const dense = chosen.length < end - start;
  const limit = (pm: number | null) =>
    pm === null
      ? null
      : { height: heightOf(pm), label: formatLength(pm, { ...shown, decimals, sign }) };
  return {
    heightTitle: `from ${facts.marks === null ? label(nominalPm) : 'own nominal'}, in ${label(stepPm)} ${shown.unit === 'mm' ? 'mm' : 'inch'}`,
    window,
    range: rangeOf(facts, heightOf),
    points: chosen.map((index) => {
      const pm = sizesPm[index]!;
      return {
        ordinal: ordinals[index]!,
        height: heightOf(pm),
        outside: (lowerPm !== null && pm < lowerPm) || (upperPm !== null && pm > upperPm),
      };
    }),
    dense,
    gap: dense ? (2 * (window.to - window.from)) / columns : 1.5,
    lower: limit(lowerPm),
    upper: limit(upperPm),
    events: facts.events
      .map((event) => ({ ordinal: event.afterOrdinal + 0.5, title: eventWords(event).title }))
      .filter(({ ordinal }) => window.from <= ordinal && ordinal <= window.to),
    seen: end > start ? { count: end - start, least, most } : null,
  };
}

const ranges = new WeakMap<object, { min: number; max: number }>();

/** Worked out once for the columns of a run: it looks at all of them. */
function rangeOf(
  { sizesPm, lowerPm, upperPm }: CloserFacts,
  heightOf: (pm: number) => number,
): { min: number; max: number } {
  const known = ranges.get(sizesPm);
  if (known !== undefined) return known;
  let [min, max] = [Infinity, -Infinity];
  for (const pm of [lowerPm, upperPm].filter((one) => one !== null)) {
    min = Math.min(min, pm);
    max = Math.max(max, pm);
  }
  for (const pm of sizesPm) {
    if (pm < min) min = pm;
    if (pm > max) max = pm;
  }
  if (min > max) return { min: -1, max: 1 };
  const [low, high] = [heightOf(min), heightOf(max)];
  const pad = Math.max(1, (high - low) * air);
  const range = { min: low - pad, max: high + pad };
  ranges.set(sizesPm, range);
  return range;
}
