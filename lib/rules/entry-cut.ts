import type { Feature } from '@/lib/schema/feature';
import { counted, type Cell } from './cells';
import { metalLeftSide } from './verdict';

/**
 * Whether a reading looks as if metal had come off since the others were taken: the piece was still to
 * cut, and this is further down (a bore: further up) than all of them by more than four steps of the gauge.
 *
 * It is asked, because nothing but the person knows; a piece that was not to cut is never asked about.
 */
export function looksCut(
  valuePm: number,
  cell: Pick<Cell, 'readings' | 'verdict'>,
  { kind }: Pick<Feature, 'kind'>,
  resolutionPm: number,
): boolean {
  if (cell.verdict?.state !== 'to cut') return false;
  const others = counted(cell.readings).map((reading) => reading.valuePm);
  if (others.length === 0) return false;
  const leastPm = 4 * resolutionPm;
  return metalLeftSide(kind) === 'top'
    ? valuePm < Math.min(...others) - leastPm
    : valuePm > Math.max(...others) + leastPm;
}
