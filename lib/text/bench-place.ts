/**
 * Where a reading is taken: "skirt, across A". What a feature has only one of is not named.
 */
export function placeWords(
  place: { station: string; direction: string },
  feature: { stations: readonly string[]; directions: readonly string[] },
): string {
  const station = feature.stations.length > 1 ? place.station : '';
  const across = feature.directions.length > 1 ? `across ${place.direction}` : '';
  return [station, across].filter((part) => part !== '').join(', ');
}
