import type { Feature } from '@/lib/schema/feature';
import type { NewCorrection, NewReading } from '@/lib/schema/reading';
import { applyCorrection } from './apply-correction';
import { counted, type Cell, type Cells } from './cells';
import { sizeOf } from './size';
import type { Standing } from './standing';
import { verdictOf } from './verdict';

/** What was just done at the bench and is not in the job's own view yet, in the order it was done. */
export type FreshEntry =
  | { kind: 'reading'; id: string; deviceTime: string; row: FreshReading }
  | { kind: 'correction'; id: string; row: FreshCorrection };
type FreshReading = Omit<NewReading, 'id' | 'deviceTime' | 'deviceSeq'>;
type FreshCorrection = Omit<NewCorrection, 'id' | 'deviceTime' | 'deviceSeq'>;

/**
 * A cell as it stands with what was just entered, so that a reading is on screen in the same frame.
 *
 * Readings the cell has already are not added twice; corrections may be heard twice without harm. The
 * history of the gauge and the limits stay those of the whole job's view, which follows a moment later.
 * Limits taken from a chosen partner carry its doubt too: `partnerStandardPm`.
 * The same cell comes back when nothing concerns it. Cost: O(readings of this cell).
 */
export function entryCell(
  cell: Cell,
  fresh: readonly FreshEntry[],
  kind: Feature['kind'],
  { gauges, history }: Pick<Cells, 'gauges' | 'history'>,
  partnerStandardPm = 0,
): Cell {
  let readings = cell.readings;
  for (const entry of fresh) readings = withEntry(readings, entry, cell);
  if (readings === cell.readings) return cell;
  const size = sizeOf(counted(readings), gauges, history);
  if (size === null) return { ...cell, readings, size, verdict: null };
  const standardPm = Math.hypot(size.standardPm, partnerStandardPm);
  const verdict = verdictOf({ valuePm: size.valuePm, standardPm }, cell.limits, kind);
  return { ...cell, readings, size, verdict };
}

function withEntry(readings: Standing[], entry: FreshEntry, cell: Cell): Standing[] {
  if (entry.kind === 'reading') {
    const { row, id } = entry;
    const isHere = row.pieceId === cell.pieceId && row.featureId === cell.featureId;
    if (!isHere || readings.some((reading) => reading.id === id)) return readings;
    return [...readings, freshStanding(entry)];
  }
  const index = readings.findIndex((reading) => reading.id === entry.row.readingId);
  if (index < 0) return readings;
  const changed = applyCorrection(entry.row, readings[index]!);
  const stays = changed.pieceId === cell.pieceId && changed.featureId === cell.featureId;
  return stays ? readings.with(index, changed) : readings.toSpliced(index, 1);
}

function freshStanding({ id, deviceTime, row }: FreshEntry & { kind: 'reading' }): Standing {
  return {
    id,
    seq: Number.MAX_SAFE_INTEGER,
    pieceId: row.pieceId,
    featureId: row.featureId,
    station: row.station,
    direction: row.direction,
    gaugeId: row.gaugeId,
    personId: row.personId,
    valuePm: row.valuePm,
    resolutionPm: row.resolutionPm,
    unit: row.unit,
    text: row.text,
    firstText: null,
    saidRight: false,
    wasHeld: false,
    deviceTime,
    state: row.heldAs === null ? 'counted' : 'held',
    heldAs: row.heldAs,
    reason: '',
  };
}
