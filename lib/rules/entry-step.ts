import type { Feature } from '@/lib/schema/feature';
import { entryPlan, isSamePlace, type Place } from './entry-plan';

/** A way to move over the station map: along the part, across it, or on in the order of measuring. */
export type PlaceStep = { along: 'stations' | 'directions' | 'plan'; by: 1 | -1 };

/**
 * The place one step from another; null where the map ends there.
 *
 * Without a place to start from (every one is taken) a step lands on the first or the last.
 */
export function entryStep(
  { stations, directions }: Pick<Feature, 'stations' | 'directions'>,
  at: Place | null,
  { along, by }: PlaceStep,
): Place | null {
  const plan = entryPlan({ stations, directions });
  if (at === null) return (by === 1 ? plan[0] : plan.at(-1)) ?? null;
  if (along === 'plan') {
    const index = plan.findIndex((place) => isSamePlace(place, at));
    return plan[index + by] ?? null;
  }
  const s = stations.indexOf(at.station) + (along === 'stations' ? by : 0);
  const d = directions.indexOf(at.direction) + (along === 'directions' ? by : 0);
  const station = stations[s];
  const direction = directions[d];
  return station === undefined || direction === undefined ? null : { station, direction };
}
