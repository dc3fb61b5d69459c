import { counted, type Cell } from './cells';
import type { Pool } from './gauge-history';
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
  const sized = [...places(counted(cell.readings).filter((r) => r.gaugeId === gaugeId))].flatMap(
    (place): GoverningSize[] => {
      const size = sizeOf(place, gauges, history);
      if (size === null) return [];
      const { station, direction } = place[0]!;
      return [{ ...size, place: { station, direction } }];
    },
  );
  const worse = (a: GoverningSize, b: GoverningSize) =>
    side === 'internal' ? a.valuePm - b.valuePm : b.valuePm - a.valuePm;
  return sized.sort(worse)[0] ?? whole;
}

function places(readings: readonly Standing[]): Iterable<Standing[]> {
  const groups = new Map<string, Standing[]>();
  for (const reading of readings) {
    const key = `${reading.station}\n${reading.direction}`;
    groups.set(key, [...(groups.get(key) ?? []), reading]);
  }
  return groups.values();
}
