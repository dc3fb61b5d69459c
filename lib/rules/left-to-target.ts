import type { Cell, Cells } from './cells';
import { governingSize } from './governing-size';
import type { Target } from './target';

/**
 * Metal still to come off a piece on the bench, pm, by the size that governs its fit, as its target card and
 * its cut have it; below zero where it is past. Null while it has no size.
 */
export function leftToTarget(
  cell: Cell,
  target: Pick<Target, 'make' | 'targetPm'>,
  governs: 'extreme' | 'mean',
  { gauges, history }: Pick<Cells, 'gauges' | 'history'>,
): number | null {
  const size = governingSize(cell, target.make, governs, gauges, history);
  if (size === null) return null;
  return target.make === 'external'
    ? size.valuePm - target.targetPm
    : target.targetPm - size.valuePm;
}
