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
  const lastCuts = lastCutReadings(sheet.cuts);
  const seqOf = new Map(sheet.readings.map((reading) => [reading.id, reading.seq]));

  const byKey = new Map<string, Cell>();
  for (const reading of standing(sheet.readings, sheet.corrections)) {
    const feature = features.get(reading.featureId);
    if (feature === undefined) continue;
    const key = cellKey(reading.pieceId, reading.featureId);
    const cell = byKey.get(key) ?? emptyCell(reading.pieceId, feature);
    const before = lastCuts.get(key);
    const old = before !== undefined && reading.seq <= (seqOf.get(before) ?? 0);
    (old ? cell.earlier : cell.readings).push(reading);
    byKey.set(key, cell);
  }

  const history = gaugeHistory(sets(byKey.values()));
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

function* sets(cells: Iterable<Cell>) {
  for (const cell of cells) {
    yield counted(cell.readings);
    yield counted(cell.earlier);
  }
}

/** By cell, the id of the last reading before its last cut. */
function lastCutReadings(cuts: readonly Cut[]): Map<string, string> {
  const last = new Map<string, Cut>();
  for (const cut of cuts) {
    if (cut.struckAt !== null || cut.lastReadingId === null) continue;
    const key = cellKey(cut.pieceId, cut.featureId);
    const known = last.get(key);
    if (known === undefined || cut.ordinal > known.ordinal) last.set(key, cut);
  }
  return new Map([...last].map(([key, cut]) => [key, cut.lastReadingId!]));
}
