import { leastSquaresLine } from '@/lib/maths/control/least-squares-line';
import { lineAt } from '@/lib/maths/control/line-at';
import type { RunPoint, RunView } from './run-view';

/** A line wants five pieces: common practice, no source; the same as of the run chart. */
const leastPieces = 5;
const picoPerMilli = 1e9;

/**
 * The straight line that the limits of one stretch follow, mm off the nominal at a turn, fitted to those of
 * its pieces that the limits are worked out from; a stretch that has none of those, before or after them, to
 * all of its own. Null where there are fewer than five.
 */
export function lineOfStretch(
  { run, nominalPm }: Pick<RunView, 'run' | 'nominalPm'>,
  stretch: readonly RunPoint[],
): ((ordinal: number) => number) | null {
  const chosen = stretch.filter(
    ({ ordinal }) => ordinal >= (run.baseFrom ?? 1) && ordinal <= (run.baseTo ?? Infinity),
  );
  const base = chosen.length === 0 ? stretch : chosen;
  if (base.length < leastPieces) return null;
  const line = leastSquaresLine(
    base.map(({ ordinal }) => ordinal),
    base.map(({ valuePm }) => (valuePm - nominalPm) / picoPerMilli),
  );
  return (ordinal) => lineAt(line, ordinal);
}
