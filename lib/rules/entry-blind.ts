import type { Feature } from '@/lib/schema/feature';
import { entryNext } from './entry-next';
import type { Standing } from './standing';

/** What a person chose to measure without seeing: nothing, every place of a feature, or so many readings. */
export type BlindChoice = 'off' | 'plan' | number;

/** How far a set has come that is hidden until it is done. */
export type Blind = {
  taken: number;
  of: number;
  /** Which set of the feature this is, from 0. */
  set: number;
};

/** A remembered word as a choice; what is no choice is off. */
export function blindChoice(word: string | null): BlindChoice {
  if (word === 'plan') return 'plan';
  const number = Number(word ?? '');
  return Number.isInteger(number) && number >= 2 && number <= 50 ? number : 'off';
}

/**
 * Whether the readings of a feature are hidden now, and how many of the set are taken; null where they
 * are to be seen.
 *
 * A set of every place is done when every place has a reading; a set of a number when that many have
 * been taken, and then again. None is done while one of its readings is held: it is asked about before
 * anything is shown. Struck readings take no part: taking one back goes back in the set.
 */
export function entryBlind(
  choice: BlindChoice,
  feature: Pick<Feature, 'stations' | 'directions'>,
  readings: readonly Pick<Standing, 'station' | 'direction' | 'state'>[],
): Blind | null {
  if (choice === 'off') return null;
  const isAsked = readings.some(({ state }) => state === 'held');
  if (choice === 'plan') {
    const { taken, held, of, next } = entryNext(feature, readings);
    return next === null && !isAsked ? null : { taken: taken + held, of, set: 0 };
  }
  const live = readings.filter(({ state }) => state !== 'struck').length;
  const isFull = live > 0 && live % choice === 0;
  if (isFull && !isAsked) return null;
  const set = Math.floor((isFull ? live - 1 : live) / choice);
  return { taken: live - set * choice, of: choice, set };
}
