import type { Feature } from '@/lib/schema/feature';
import type { Cut } from '@/lib/schema/fit';
import type { JobSheet } from '@/lib/schema/sheet';
import { drawnLimits } from './feature-limits';
import { gaugeHistory, type Pool } from './gauge-history';
import { sizeOf, type GaugeFacts, type Size } from './size';
import { standing, type Standing } from './standing';
import { verdictOf, type Limits, type Verdict } from './verdict';

/** One feature on one piece: what was read of it and what that says. */
export type Cell = {
  pieceId: string;
  featureId: string;
  /** Readings since the last cut, in the order of the book, whatever their state. */
  readings: Standing[];
  /** Readings that tell the size before the last cut. */
  earlier: Standing[];
  size: Size | null;
  limits: Limits;
  /** Where the limits came from; `open` when neither drawing nor partner says. */
  limitsFrom: 'drawing' | 'partner' | 'open';
  verdict: Verdict | null;
};

export type Cells = {
  /** Cells that have at least one reading, by `cellKey`. */
  byKey: Map<string, Cell>;
  history: Map<string, Pool>;
  gauges: Map<string, GaugeFacts>;
};

export const cellKey = (pieceId: string, featureId: string) => `${pieceId} ${featureId}`;

/**
 * Every measured cell of a job, with its size and its verdict by the drawing's own limits.
 * Cost: O(readings), each looked at a fixed number of times.
 */
export function cellsOf(
  sheet: Pick<JobSheet, 'readings' | 'corrections' | 'gauges' | 'features' | 'cuts'>,
): Cells {
  const features = new Map(sheet.features.map((feature) => [feature.id, feature]));
  const gauges = new Map<string, GaugeFacts>(sheet.gauges.map((gauge) => [gauge.id, gauge]));
  const seqOf = new Map(sheet.readings.map((reading) => [reading.id, reading.seq]));

  const cuts = cutPlaces(sheet.cuts, seqOf);

  const byKey = new Map<string, Cell>();
  for (const reading of standing(sheet.readings, sheet.corrections)) {
    const feature = features.get(reading.featureId);
    if (feature === undefined) continue;
    const key = cellKey(reading.pieceId, reading.featureId);
    const cell = byKey.get(key) ?? emptyCell(reading.pieceId, feature);
    const old = reading.seq <= (cuts.get(key)?.at(-1) ?? 0);
    (old ? cell.earlier : cell.readings).push(reading);
    byKey.set(key, cell);
  }

  const history = gaugeHistory(sets(byKey.values(), cuts));
  for (const cell of byKey.values()) {
    cell.size = sizeOf(counted(cell.readings), gauges, history);
    const kind = features.get(cell.featureId)!.kind;
    cell.verdict = cell.size === null ? null : verdictOf(cell.size, cell.limits, kind);
  }
  return { byKey, history, gauges };
}

/** A cell nothing was read of yet. */
export function emptyCell(pieceId: string, feature: Feature): Cell {
  const limits = drawnLimits(feature);
  const open = limits.lowerPm === null && limits.upperPm === null;
  return {
    pieceId,
    featureId: feature.id,
    readings: [],
    earlier: [],
    size: null,
    limits,
    limitsFrom: open ? 'open' : 'drawing',
    verdict: null,
  };
}

/** The readings that count. */
export function counted(readings: readonly Standing[]): Standing[] {
  return readings.filter((reading) => reading.state === 'counted');
}

/** Sets of readings of the same metal: a cut between two of them parts them. */
function* sets(cells: Iterable<Cell>, cuts: ReadonlyMap<string, readonly number[]>) {
  for (const cell of cells) {
    yield counted(cell.readings);
    let from = 0;
    for (const to of cuts.get(cellKey(cell.pieceId, cell.featureId)) ?? []) {
      const after = from;
      yield counted(cell.earlier).filter(({ seq }) => seq > after && seq <= to);
      from = to;
    }
  }
}

/**
 * By cell, where in the book its cuts lie: the number of the last reading before each, rising. The last of
 * them is that of the cut with the highest place.
 */
function cutPlaces(
  cuts: readonly Cut[],
  seqOf: ReadonlyMap<string, number>,
): Map<string, number[]> {
  const places = new Map<string, number[]>();
  for (const cut of [...cuts].sort((a, b) => a.ordinal - b.ordinal)) {
    if (cut.struckAt !== null || cut.lastReadingId === null) continue;
    const key = cellKey(cut.pieceId, cut.featureId);
    const known = places.get(key) ?? [];
    const seq = Math.max(known.at(-1) ?? 0, seqOf.get(cut.lastReadingId) ?? 0);
    places.set(key, [...known, seq]);
  }
  return places;
}
