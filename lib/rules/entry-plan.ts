import type { Feature } from '@/lib/schema/feature';

/** Where on a feature, and which way across it, a reading is taken. */
export type Place = { station: string; direction: string };

/** Every place of a feature in the order of measuring: all directions of a station, then the next station. */
export function entryPlan({
  stations,
  directions,
}: Pick<Feature, 'stations' | 'directions'>): Place[] {
  return stations.flatMap((station) => directions.map((direction) => ({ station, direction })));
}

export function isSamePlace(a: Place, b: Place): boolean {
  return a.station === b.station && a.direction === b.direction;
}
