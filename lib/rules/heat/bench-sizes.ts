import { sizeAt20 } from '@/lib/maths/thermal/size-at-20';
import type { Reading } from '@/lib/schema/reading';
import { mmFromPm, pmFromMm } from '@/lib/units/picometres';
import { counted, type Cell } from '../cells';
import type { HotSide } from './hot-cold';
import type { HeatMaterial } from './starter-materials';

/** A size brought to 20 degrees C; `offPm` is what was added to the reading. */
export type SizeAtBench = { sizePm: number; temperatureC: number; offPm: number };

/**
 * The size at 20 degrees C of a piece whose readings all say how warm it was (`sizeAt20`), the gauge taken to
 * read true. Null where one of them does not say: then the size is taken as it was read.
 */
export function sizeFromBench(
  cell: Pick<Cell, 'readings' | 'size'>,
  sizePm: number,
  material: HeatMaterial,
  readings: readonly Pick<Reading, 'id' | 'temperatureMilliC'>[],
): SizeAtBench | null {
  const read = counted(cell.readings).filter(({ gaugeId }) => gaugeId === cell.size?.gaugeId);
  const ids = new Set(read.map(({ id }) => id));
  const known = readings.flatMap(({ id, temperatureMilliC: at }) =>
    at === null || !ids.has(id) ? [] : [at],
  );
  if (known.length === 0 || known.length < read.length) return null;
  const temperatureC = known.reduce((sum, at) => sum + at, 0) / known.length / 1000;
  const offPm = offAt(sizePm, material, temperatureC);
  return { sizePm: sizePm + offPm, temperatureC, offPm };
}

/** What the clearance at 20 degrees C would be other than read, had both pieces been ten degrees warmer, pm. */
export function tenWarmerAtBench({ bore, shaft }: { bore: HotSide; shaft: HotSide }): number {
  return offAt(bore.sizePm, bore.material, 30) - offAt(shaft.sizePm, shaft.material, 30);
}

function offAt(sizePm: number, material: HeatMaterial, temperatureC: number): number {
  const { correctionMm } = sizeAt20({
    readingMm: mmFromPm(sizePm),
    pieceExpansionPerC: material.expansionNanoPerC * 1e-9,
    pieceTemperatureC: temperatureC,
  });
  return pmFromMm(correctionMm);
}
