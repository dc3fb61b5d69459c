import { leastSquaresLine } from '@/lib/maths/control/least-squares-line';
import { lineBand } from '@/lib/maths/control/line-band';
import type { RunEvent } from '@/lib/schema/run';
import { freshTurns } from './run-stretches';
import { startsAfresh, type RunView } from './run-view';

/** What an offset was to do, and what the first piece after it shows. */
export type OffsetEffect = {
  event: RunEvent;
  /** How far it was moved, on diameter, pm. */
  askedPm: number;
  /** The turn it shows at: the first one measured after it, or the next one to make. */
  mark: string;
  /** Where the line before it, moved by the offset, puts that piece, and half the band about it, pm. */
  expectedPm: number;
  halfPm: number;
  /** Null until that piece is measured. */
  got: { valuePm: number; movedPm: number; asExpected: boolean } | null;
};

const confidence = 0.95;
const leastPieces = 5;
const picoPerMilli = 1e9;

/**
 * The last offset of a run followed to its effect, against what the drift line before it predicted and
 * never against the last piece. Offsets put in between the same two measured pieces are one. Null where no
 * offset with an amount was noted, where an insert was changed or the piece re-chucked between those two,
 * which moves the size as well, where fewer than five pieces were measured between the event before it and
 * it, or where nothing comes after it.
 */
export function offsetEffect(view: RunView): OffsetEffect | null {
  const event = view.events.findLast((one) => one.kind === 'offset moved');
  if (event === undefined) return null;
  const last = view.points.findLast(({ ordinal }) => ordinal <= event.afterOrdinal);
  const first = view.points.find(({ ordinal }) => ordinal > event.afterOrdinal);
  const place = first ?? view.pieces.find(({ ordinal }) => ordinal > event.afterOrdinal);
  if (last === undefined || place === undefined) return null;
  const between = view.events.filter(
    ({ kind, afterOrdinal }) =>
      startsAfresh.has(kind) && afterOrdinal >= last.ordinal && afterOrdinal < place.ordinal,
  );
  let askedPm = 0;
  for (const { kind, offsetPm } of between) {
    if (kind !== 'offset moved' || offsetPm === null) return null;
    askedPm += offsetPm;
  }
  const since = Math.max(0, ...freshTurns(view.events).filter((turn) => turn < last.ordinal));
  const before = view.points.filter(({ ordinal }) => ordinal > since && ordinal <= last.ordinal);
  if (before.length < leastPieces) return null;
  const line = leastSquaresLine(
    before.map(({ ordinal }) => ordinal),
    before.map(({ valuePm }) => (valuePm - view.nominalPm) / picoPerMilli),
  );
  const band = lineBand(line, place.ordinal, confidence);
  const wouldPm = view.nominalPm + band.line * picoPerMilli;
  const expectedPm = Math.round(wouldPm + askedPm);
  const halfPm = ((band.newReading.high - band.newReading.low) / 2) * picoPerMilli;
  return {
    event,
    askedPm,
    mark: place.mark,
    expectedPm,
    halfPm,
    got:
      first === undefined
        ? null
        : {
            valuePm: first.valuePm,
            movedPm: Math.round(first.valuePm - wouldPm),
            asExpected: Math.abs(first.valuePm - expectedPm) <= halfPm,
          },
  };
}
