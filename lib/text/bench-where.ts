import { dayAndTime, timeOf } from './when';

/**
 * Where a person was who comes back: what was read last, and what was next. `figure` is null where it
 * is hidden.
 *
 * @example
 * // Here at 10:42: P5 outside, crown, across A, read 17.999. Next: crown, across B.
 */
export function whereWords(facts: {
  mark: string;
  feature: string;
  /** Where on the feature the last reading is from; empty where it has one place. */
  place: string;
  figure: string | null;
  /** Of the last reading, RFC 3339. */
  at: string;
  now: Date;
  /** "crown, across B", "on to P6"; empty when nothing is left. */
  next: string;
}): string {
  const { mark, feature, place, figure, at, now, next } = facts;
  const then = new Date(at);
  const isToday = then.toDateString() === now.toDateString();
  const when = isToday ? `at ${timeOf(at)}` : `on ${dayAndTime(at)}`;
  const of = [`${mark} ${feature.toLowerCase()}`, place].filter((part) => part !== '').join(', ');
  const read = figure === null ? '' : `, read ${figure}`;
  return `You were here ${when}: ${of}${read}. ${next === '' ? 'Nothing is left to read.' : `Next: ${next}.`}`;
}

/** Said where there was nothing to take back here, and the last entry has been fetched. */
export function lastEntryWords(name: string): string {
  return `Nothing was entered here. The last entry is on ${name}: once more takes it back.`;
}

/** Said of this device's own last reading where another device has read since. */
export function takenBackWords(figure: string, isStruck: boolean): string {
  return isStruck
    ? `${figure}, entered here, is struck out. What another device read since stays.`
    : `${figure}, entered here, is put back.`;
}

/** Said where the disk of this device would not take it. */
export const strikeTroubleWords =
  'That could not be kept on this device, and nothing was changed. Make room, then try it again.';
