import type { Feature } from '@/lib/schema/feature';
import { counted, type Cell } from './cells';
import type { Slip } from './slip';
import { metalLeftSide } from './verdict';

/**
 * Whether a reading looks as if metal had come off since the others were taken: the piece was still to
 * cut, and this is further down (a bore: further up) than all of them by more than four steps of the gauge.
 * Past its limit by more than was left to come off, it is rather the slip that explains it, where one does.
 *
 * It is asked, because nothing but the person knows; a piece that was not to cut is never asked about.
 *
 * @param slip what the reading is suspected of; asked for only where it decides
 */
export function looksCut(
  valuePm: number,
  cell: Pick<Cell, 'readings' | 'verdict'>,
  { kind }: Pick<Feature, 'kind'>,
  resolutionPm: number,
  slip: () => Pick<Slip, 'insteadPm'> | null,
): boolean {
  const { verdict } = cell;
  if (verdict?.state !== 'to cut' || verdict.limitPm === null) return false;
  const others = counted(cell.readings).map((reading) => reading.valuePm);
  if (others.length === 0) return false;
  const leastPm = 4 * resolutionPm;
  const isTop = metalLeftSide(kind) === 'top';
  const isLess = isTop
    ? valuePm < Math.min(...others) - leastPm
    : valuePm > Math.max(...others) + leastPm;
  if (!isLess) return false;
  const pastPm = isTop ? verdict.limitPm - valuePm : valuePm - verdict.limitPm;
  return pastPm <= verdict.beyondPm || (slip()?.insteadPm ?? null) === null;
}
