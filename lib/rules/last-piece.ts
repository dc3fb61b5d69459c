import { leastSquaresLine } from '@/lib/maths/control/least-squares-line';
import { lineBand } from '@/lib/maths/control/line-band';
import type { RunView } from './run-view';

/** How the last piece stands to the line through those before it. */
export type LastPiece = {
  mark: string;
  /** Off that line, pm; above is positive. */
  offPm: number;
  /** Within the 95 % band of a single piece: the noise, which nobody is to answer. */
  within: boolean;
};

const confidence = 0.95;
/** Five for the line, and the one that is looked at. */
const leastPieces = 6;
const picoPerMilli = 1e9;

/**
 * The last piece against the line through the others since the last event; null where they are too few, or too
 * coarsely measured, for a line.
 * An answer to a piece within the band only adds to the scatter, so none is advised.
 */
export function lastPiece(view: RunView): LastPiece | null {
  const since = view.points.filter(({ earlier }) => !earlier);
  if (since.length < leastPieces || view.drift?.kind !== 'line') return null;
  const before = since.slice(0, -1);
  const last = since.at(-1)!;
  const offMm = (pm: number) => (pm - view.nominalPm) / picoPerMilli;
  const line = leastSquaresLine(
    before.map(({ ordinal }) => ordinal),
    before.map(({ valuePm }) => offMm(valuePm)),
  );
  const { line: atMm, newReading } = lineBand(line, last.ordinal, confidence);
  const valueMm = offMm(last.valuePm);
  return {
    mark: last.mark,
    offPm: Math.round((valueMm - atMm) * picoPerMilli),
    within: valueMm >= newReading.low && valueMm <= newReading.high,
  };
}
