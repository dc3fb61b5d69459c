import type { RunEvent } from '@/lib/schema/run';
import { counted } from './cells';
import { lineOfStretch } from './control-line';
import { stretchesOf } from './run-stretches';
import type { RunPoint, RunView } from './run-view';

/** What one point of a control chart stands for: a piece, or a group taken together. */
export type ControlGroup = {
  /** First and last turn in it; it stands on the chart at the last. */
  from: number;
  to: number;
  /** "W7", or "W5 to W9". */
  mark: string;
  /** What is judged, mm: off the nominal, or off the drift line where the limits follow it. */
  values: number[];
  /** Height of that line at it, mm off the nominal; 0 for flat limits. */
  lineMm: number;
  /** Number of the stretch between events that start afresh, from 0. */
  stretch: number;
  /** Within the stretch the limits are worked out from. */
  inBase: boolean;
  /** Events between its first and last piece. */
  straddles: RunEvent['kind'][];
};

export type ControlGroups = {
  groups: ControlGroup[];
  /** Groups that lack a piece or a reading, so that they have no point; the last one may just be waiting. */
  short: { mark: string; has: number; waits: boolean }[];
  /** Stretches with too few pieces for a line of their own: with limits that follow it they have no point. */
  lineless: { first: string; last: string; count: number }[];
};

const picoPerMilli = 1e9;

type Item = {
  point: RunPoint;
  /** Off the nominal, or off the line, mm. */
  valueMm: number;
  lineMm: number;
  stretch: number;
};

/** Whether the run is charted in groups: several pieces in a row, or the readings of a piece. */
export function isGrouped({ run }: Pick<RunView, 'run'>): boolean {
  if (run.together === 1 || run.control === 'single pieces') return false;
  const isPair = run.control === 'mean and range' || run.control === 'mean and s';
  return isPair || run.groupOf === 'pieces';
}

/**
 * The points of a control chart in the order made: single pieces, or groups of `together`.
 *
 * Pieces are counted into groups by what was read at all, so that one set aside does not shift the groups
 * after it. With limits that follow the line, a stretch that has too few pieces for a line of its own has
 * no groups. Cost: O(readings).
 */
export function controlGroups(view: RunView): ControlGroups {
  const items = itemsOf(view);
  return { ...pointsOf(view, items), lineless: linelessOf(view) };
}

function pointsOf(view: RunView, items: readonly Item[]): Omit<ControlGroups, 'lineless'> {
  if (!isGrouped(view)) {
    return { groups: items.map((item) => groupOf(view, [item], [item.valueMm])), short: [] };
  }
  return view.run.groupOf === 'readings' ? ofReadings(view, items) : ofPieces(view, items);
}

function linelessOf(view: RunView): ControlGroups['lineless'] {
  if (view.run.follow === 'flat') return [];
  return stretchesOf(view)
    .filter((stretch) => lineOfStretch(view, stretch) === null)
    .map((stretch) => ({
      first: stretch[0]!.mark,
      last: stretch.at(-1)!.mark,
      count: stretch.length,
    }));
}

function itemsOf(view: RunView): Item[] {
  const offMm = (pm: number) => (pm - view.nominalPm) / picoPerMilli;
  return stretchesOf(view).flatMap((stretch, index) => {
    if (view.run.follow === 'flat') {
      return stretch.map((point) => ({
        point,
        valueMm: offMm(point.valuePm),
        lineMm: 0,
        stretch: index,
      }));
    }
    const lineAtMm = lineOfStretch(view, stretch);
    if (lineAtMm === null) return [];
    return stretch.map((point) => {
      const lineMm = lineAtMm(point.ordinal);
      return { point, valueMm: offMm(point.valuePm) - lineMm, lineMm, stretch: index };
    });
  });
}

function ofReadings(view: RunView, items: readonly Item[]): Omit<ControlGroups, 'lineless'> {
  const groups: ControlGroup[] = [];
  const short: ControlGroups['short'] = [];
  for (const item of items) {
    const { cell, size, mark } = item.point;
    const readings = counted(cell.readings).filter(({ gaugeId }) => gaugeId === size.gaugeId);
    if (isShort(view, readings.length)) {
      short.push({ mark, has: readings.length, waits: item === items.at(-1) });
      continue;
    }
    const own = readings.map(
      (reading) => item.valueMm + (reading.valuePm - size.valuePm) / picoPerMilli,
    );
    groups.push(groupOf(view, [item], own));
  }
  return { groups, short };
}

function ofPieces(view: RunView, items: readonly Item[]): Omit<ControlGroups, 'lineless'> {
  const { together } = view.run;
  const turns = [...view.read].sort((a, b) => a - b);
  const byTurn = new Map(items.map((item) => [item.point.ordinal, item]));
  const groups: ControlGroup[] = [];
  const short: ControlGroups['short'] = [];
  for (let at = 0; at < turns.length; at += together) {
    const own = turns.slice(at, at + together).flatMap((turn) => byTurn.get(turn) ?? []);
    if (own.length === 0) continue;
    if (isShort(view, own.length)) {
      short.push({
        mark: markOf(own),
        has: own.length,
        waits: at + together > turns.length,
      });
      continue;
    }
    groups.push(
      groupOf(
        view,
        own,
        own.map(({ valueMm }) => valueMm),
      ),
    );
  }
  return { groups, short };
}

/** A range wants all of a group; s can be had from any two, but not while the group is still being made. */
function isShort({ run }: RunView, has: number): boolean {
  return run.control === 'mean and s' && run.groupOf === 'readings'
    ? has < 2
    : has !== run.together;
}

function groupOf(view: RunView, own: readonly Item[], values: number[]): ControlGroup {
  const { baseFrom, baseTo } = view.run;
  const [from, to] = [own[0]!.point.ordinal, own.at(-1)!.point.ordinal];
  return {
    from,
    to,
    mark: markOf(own),
    values,
    lineMm: own.reduce((sum, { lineMm }) => sum + lineMm, 0) / own.length,
    stretch: own[0]!.stretch,
    inBase: from >= (baseFrom ?? 1) && to <= (baseTo ?? Infinity),
    straddles:
      from === to
        ? []
        : view.events
            .filter(({ afterOrdinal }) => afterOrdinal >= from && afterOrdinal < to)
            .map(({ kind }) => kind),
  };
}

function markOf(own: readonly Item[]): string {
  const [first, last] = [own[0]!.point.mark, own.at(-1)!.point.mark];
  return first === last ? first : `${first} to ${last}`;
}
