import type { Feature } from '@/lib/schema/feature';
import { entryPlan, isSamePlace, type Place } from './entry-plan';
import type { Standing } from './standing';

/** How far the station plan of one feature on one piece has come. */
export type PlanStanding = {
  /** Places with a reading that counts. */
  taken: number;
  /** Places whose only reading is held. */
  held: number;
  of: number;
  /** Where the next reading belongs; null when every place has one. */
  next: Place | null;
};

/**
 * Where the next reading of a feature belongs.
 *
 * The first place without a reading after the one read last, round to the front again: a place that was
 * passed over by hand is not gone back to at once. A struck reading leaves its place free, a held one
 * does not. Cost: O(places x readings of this feature).
 */
export function entryNext(
  feature: Pick<Feature, 'stations' | 'directions'>,
  readings: readonly Pick<Standing, 'station' | 'direction' | 'state'>[],
): PlanStanding {
  const plan = entryPlan(feature);
  const standing = readings.filter((reading) => reading.state !== 'struck');
  const isFree = (place: Place) => !standing.some((reading) => isSamePlace(reading, place));
  const has = (place: Place, state: Standing['state']) =>
    standing.some((reading) => reading.state === state && isSamePlace(reading, place));
  const last = standing.at(-1);
  const from = last === undefined ? 0 : plan.findIndex((place) => isSamePlace(place, last)) + 1;
  const inOrder = [...plan.slice(from), ...plan.slice(0, from)];
  const taken = plan.filter((place) => has(place, 'counted')).length;
  return {
    taken,
    held: plan.filter((place) => has(place, 'held') && !has(place, 'counted')).length,
    of: plan.length,
    next: inOrder.find(isFree) ?? null,
  };
}
