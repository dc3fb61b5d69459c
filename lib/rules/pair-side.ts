import type { PairSide } from '@/lib/schema/fit';
import type { Gauge } from '@/lib/schema/gauge';
import { counted, type Cell } from './cells';
import type { GoverningSize } from './governing-size';

/**
 * What the size of one piece of a pair stands on now: the readings that tell it, and their gauge as it is
 * stated. Null while the piece has no size.
 */
export function pairSide(
  size: GoverningSize | null,
  cell: Cell | undefined,
  gauges: ReadonlyMap<string, Gauge>,
): PairSide | null {
  const gauge = size === null ? undefined : gauges.get(size.gaugeId);
  if (size === null || cell === undefined || gauge === undefined) return null;
  return {
    sizePm: size.valuePm,
    gaugeId: gauge.id,
    readings: counted(cell.readings)
      .filter(({ gaugeId }) => gaugeId === gauge.id)
      .map(({ id, station, direction, valuePm }) => ({
        at: `${station} ${direction}`.trim(),
        id,
        valuePm,
      })),
    expandedPm: Math.round(size.expandedPm),
    gaugeStruck: gauge.struckAt !== null,
    resolutionPm: gauge.resolutionPm,
    gaugeUncertaintyPm: gauge.uncertaintyPm,
  };
}
