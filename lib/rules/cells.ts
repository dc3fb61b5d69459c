import type { Feature } from '@/lib/schema/feature';
import type { Cut } from '@/lib/schema/fit';
import type { JobSheet } from '@/lib/schema/sheet';
import { drawnLimits } from './feature-limits';
import { emptyCellsMemory, type CellRecord, type CellsMemory } from './cells-memory';
import { gaugeHistory, type Pool } from './gauge-history';
import { gaugeSpreads } from './gauge-spreads';
import { sizeOf, type GaugeFacts, type Size } from './size';
import type { Standing } from './standing';
import { hearRows } from './standing-memory';
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
 *
 * With the memory of the call before, only cells that something happened to are worked out anew: the answer is
 * the same as without, and cells nothing happened to are the same objects. Cells that the drawing leaves open are
 * new objects each time, since their limits are given to them afterwards.
 * Cost: O(readings), each looked at a fixed number of times; with a memory O(cells), and comparing references.
 */
export function cellsOf(
  sheet: Pick<JobSheet, 'readings' | 'corrections' | 'gauges' | 'features' | 'cuts'>,
  memory: CellsMemory = emptyCellsMemory(),
): Cells {
  const touched = heardOf(sheet, memory);
  const newGauges = sheet.gauges !== memory.gauges;
  if (newGauges) {
    memory.gauges = sheet.gauges;
    memory.gaugeById = new Map<string, GaugeFacts>(sheet.gauges.map((one) => [one.id, one]));
  }
  workOut(memory, touched);
  const gauges = memory.gaugeById;
  const history = gaugeHistory(spreads(memory.records));
  const byKey = new Map<string, Cell>();
  for (const record of memory.records) {
    if (newGauges || touched.has(record.key) || !isSized(record, history)) {
      size(record, gauges, history);
    }
    const { cell } = record;
    byKey.set(record.key, cell.limitsFrom === 'open' ? { ...cell } : cell);
  }
  return { byKey, history, gauges };
}

/** The keys of cells that have to be worked out anew. */
function heardOf(
  sheet: Pick<JobSheet, 'readings' | 'corrections' | 'features' | 'cuts'>,
  memory: CellsMemory,
): ReadonlySet<string> {
  const touched = new Set<string>();
  /** Readings that came, went or took another number; only those that stand before a cut matter. */
  const moved = new Set<string>();
  hearRows(memory.standing, sheet.readings, sheet.corrections, (before, after) => {
    if (before !== null) touched.add(cellKey(before.pieceId, before.featureId));
    if (sheet.cuts.length > 0 && before?.seq !== after?.seq) moved.add((after ?? before)!.id);
    if (after === null) return;
    const key = cellKey(after.pieceId, after.featureId);
    touched.add(key);
    const members = memory.members.get(key);
    if (members === undefined) memory.members.set(key, [after]);
    else members.push(after);
  });
  if (sheet.cuts !== memory.cuts) {
    const now = cutReadings(sheet.cuts);
    for (const key of new Set([...now.keys(), ...memory.cutsOf.keys()])) {
      if (now.get(key)?.join() !== memory.cutsOf.get(key)?.join()) touched.add(key);
    }
    memory.cuts = sheet.cuts;
    memory.cutsOf = now;
  }
  // A reading may have been moved away from the cell whose cut it stands before.
  if (moved.size > 0) {
    for (const [key, ids] of memory.cutsOf) if (ids.some((id) => moved.has(id))) touched.add(key);
  }
  if (sheet.features !== memory.features) {
    const now = new Map(sheet.features.map((feature) => [feature.id, feature]));
    for (const [key, [first]] of memory.members) {
      const { featureId } = first!;
      if (now.get(featureId) !== memory.featureById.get(featureId)) touched.add(key);
    }
    memory.features = sheet.features;
    memory.featureById = now;
  }
  return touched;
}

/** Readings, limits and spreads of the cells named; their sizes are still those of before. */
function workOut(memory: CellsMemory, touched: ReadonlySet<string>): void {
  let isInOrder = true;
  for (const key of touched) {
    const known = memory.recordOf.get(key);
    const standings = (memory.members.get(key) ?? [])
      .filter((one) => memory.standing.known.get(one.id)?.standing === one)
      .sort((a, b) => a.seq - b.seq);
    const [first] = standings;
    const feature = first && memory.featureById.get(first.featureId);
    if (first === undefined) memory.members.delete(key);
    else memory.members.set(key, standings);
    if (first === undefined || feature === undefined) {
      memory.recordOf.delete(key);
      isInOrder &&= known === undefined;
      continue;
    }
    const cell = emptyCell(first.pieceId, feature);
    const places = cutPlaces(memory, key);
    const cutSeq = places.at(-1) ?? 0;
    for (const reading of standings) {
      (reading.seq <= cutSeq ? cell.earlier : cell.readings).push(reading);
    }
    const spreadsHere: CellRecord['spreads'] = [...sets(cell, places)].map(gaugeSpreads);
    const firstSeq = first.seq;
    if (known === undefined) {
      const record = { key, feature, firstSeq, cell, spreads: spreadsHere, pool: undefined };
      isInOrder &&= firstSeq > (memory.records.at(-1)?.firstSeq ?? 0);
      memory.recordOf.set(key, record);
      memory.records.push(record);
    } else {
      isInOrder &&= firstSeq === known.firstSeq;
      Object.assign(known, { feature, firstSeq, cell, spreads: spreadsHere });
    }
  }
  if (isInOrder) return;
  memory.records = [...memory.recordOf.values()].sort((a, b) => a.firstSeq - b.firstSeq);
}

/** Whether its size does not depend on what the history now says otherwise. */
function isSized(
  { cell: { size: known }, pool }: CellRecord,
  history: ReadonlyMap<string, Pool>,
): boolean {
  if (known === null) return false;
  if (known.repeatability === 'own spread') return true;
  const now = history.get(known.gaugeId);
  return now?.sdPm === pool?.sdPm && now?.degrees === pool?.degrees;
}

function size(
  record: CellRecord,
  gauges: ReadonlyMap<string, GaugeFacts>,
  history: ReadonlyMap<string, Pool>,
): void {
  const { cell, feature } = record;
  const found = sizeOf(counted(cell.readings), gauges, history);
  record.pool = found === null ? undefined : history.get(found.gaugeId);
  if (found === null && cell.size === null) return;
  const verdict = found === null ? null : verdictOf(found, cell.limits, feature.kind);
  record.cell = { ...cell, size: found, verdict };
}

function* spreads(records: readonly CellRecord[]) {
  for (const record of records) yield* record.spreads;
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
function* sets(cell: Cell, places: readonly number[]) {
  yield counted(cell.readings);
  let from = 0;
  for (const to of places) {
    const after = from;
    yield counted(cell.earlier).filter(({ seq }) => seq > after && seq <= to);
    from = to;
  }
}

/** By cell, the ids of the last readings before each of its cuts, in the order of their places. */
function cutReadings(cuts: readonly Cut[]): Map<string, string[]> {
  const found = new Map<string, string[]>();
  for (const cut of [...cuts].sort((a, b) => a.ordinal - b.ordinal)) {
    if (cut.struckAt !== null || cut.lastReadingId === null) continue;
    const key = cellKey(cut.pieceId, cut.featureId);
    const known = found.get(key);
    if (known === undefined) found.set(key, [cut.lastReadingId]);
    else known.push(cut.lastReadingId);
  }
  return found;
}

/** Where in the book the cuts of a cell lie: the number of the last reading before each, never falling. */
function cutPlaces(memory: CellsMemory, key: string): number[] {
  const places: number[] = [];
  for (const id of memory.cutsOf.get(key) ?? []) {
    places.push(Math.max(places.at(-1) ?? 0, memory.standing.known.get(id)?.row.seq ?? 0));
  }
  return places;
}
