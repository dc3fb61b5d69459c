import type { Feature } from '@/lib/schema/feature';
import { entryNext } from './entry-next';
import type { Standing } from './standing';

/** What a person chose to measure without seeing: nothing, every place of a feature, or so many readings. */
export type BlindChoice = 'off' | 'plan' | number;

/** How far a set has come that is hidden until it is done. */
export type Blind = { taken: number; of: number };

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
 * A set of every place is done when every place has a reading, counted or held; a set of a number when
 * that many have been taken, and then again. Struck readings take no part: taking one back goes back
 * in the set.
 */
export function entryBlind(
  choice: BlindChoice,
  feature: Pick<Feature, 'stations' | 'directions'>,
  readings: readonly Pick<Standing, 'station' | 'direction' | 'state'>[],
): Blind | null {
  if (choice === 'off') return null;
  if (choice === 'plan') {
    const { taken, held, of, next } = entryNext(feature, readings);
    return next === null ? null : { taken: taken + held, of };
  }
  const live = readings.filter(({ state }) => state !== 'struck').length;
  const taken = live % choice;
  return live > 0 && taken === 0 ? null : { taken, of: choice };
}
