import { isDeepStrictEqual } from 'node:util';
import type { Fields } from './thing-types';

/**
 * Whether `row` says, word for word, everything that `said` says. What `said` leaves open may be anything, and
 * so may a field that `row` has not: it was written before the notebook had one.
 */
export function sameContent(said: Fields, row: Fields): boolean {
  return Object.entries(said).every(
    ([name, value]) => !Object.hasOwn(row, name) || isDeepStrictEqual(value, row[name]),
  );
}
