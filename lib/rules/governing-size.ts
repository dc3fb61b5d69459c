import { counted, type Cell } from './cells';
import type { Pool } from './gauge-history';
import { meanPm } from './mean-pm';
import { sizeOf, type GaugeFacts, type Size } from './size';
import type { Standing } from './standing';

/** The size that decides a fit, and where on the piece it was read. */
export type GoverningSize = Size & {
  /** Station and direction of the reading that governs; null when the mean does. */
  place: { station: string; direction: string } | null;
};

/**
 * The size of a piece that decides whether it passes its partner.
 *
 * `extreme`: the smallest place of an internal feature or the largest of an external one, each place
 * being the mean of what was read there; its uncertainty is that of so few readings. `mean`: the size
 * of the whole feature. Where a place alone has no known uncertainty the mean governs.
 * Null while the feature has no size.
 */
export function governingSize(
  cell: Cell | undefined,
  side: 'internal' | 'external',
  governs: 'extreme' | 'mean',
  gauges: ReadonlyMap<string, GaugeFacts>,
  history: ReadonlyMap<string, Pool>,
): GoverningSize | null {
  if (cell === undefined || cell.size === null) return null;
  const whole: GoverningSize = { ...cell.size, place: null };
  if (governs === 'mean') return whole;
  const { gaugeId } = cell.size;
  const byPlace = [...places(counted(cell.readings).filter((r) => r.gaugeId === gaugeId))];
  const means = byPlace.map((readings) => ({
    readings,
    valuePm: meanPm(readings.map((reading) => reading.valuePm)),
  }));
  // The worst place is told by its mean; only where that has no known uncertainty is the next one asked.
  means.sort((a, b) => (side === 'internal' ? a.valuePm - b.valuePm : b.valuePm - a.valuePm));
  for (const { readings } of means) {
    const size = sizeOf(readings, gauges, history);
    const { station, direction } = readings[0]!;
    if (size !== null) return { ...size, place: { station, direction } };
  }
  return whole;
}

function places(readings: readonly Standing[]): Iterable<Standing[]> {
  const groups = new Map<string, Standing[]>();
  for (const reading of readings) {
    const key = `${reading.station}\n${reading.direction}`;
    groups.set(key, [...(groups.get(key) ?? []), reading]);
  }
  return groups.values();
}
