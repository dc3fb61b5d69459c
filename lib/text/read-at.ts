import { dayAndTime, timeOf } from './when';

/** A reading that reaches the book later than this, or before it was read, is said to. */
const apartMs = 2 * 60_000;

/**
 * When a reading was read, by the clock of its device, and when the book had it, where that is another time:
 * it waited for a network, or the clock was off. The day is said where it is not today's.
 *
 * @param receivedAt by the notebook's clock; null while it has not got there
 * @example
 * // 14:12, in the book 13:12
 */
export function readAtWords(at: string, receivedAt: string | null, now: Date): string {
  const read = whenOn(at, now);
  if (receivedAt === null || Math.abs(Date.parse(receivedAt) - Date.parse(at)) <= apartMs) {
    return read;
  }
  return `${read}, in the book ${whenOn(receivedAt, new Date(at))}`;
}

function whenOn(instant: string, day: Date): string {
  const isThen = new Date(instant).toDateString() === day.toDateString();
  return isThen ? timeOf(instant) : dayAndTime(instant);
}
