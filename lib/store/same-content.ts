import { isDeepStrictEqual } from 'node:util';
import type { Fields } from './thing-types';

/** Whether `row` says, word for word, everything that `said` says; what `said` leaves open may be anything. */
export function sameContent(said: Fields, row: Fields): boolean {
  return Object.entries(said).every(([name, value]) => isDeepStrictEqual(value, row[name]));
}
