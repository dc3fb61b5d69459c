/** One place to measure at: what was read there last. */
export type StationCell = {
  /** As it was typed or sent; null while nothing was. */
  text: string | null;
  state: 'empty' | 'counted' | 'held' | 'struck';
};

export type Place = { station: number; direction: number };

/** Where the arrow keys go from a place: over the edge there is nothing. */
export function placeAfter(
  { station, direction }: Place,
  key: string,
  stations: number,
  directions: number,
): Place | null {
  const [right, down] = moves[key] ?? [0, 0];
  const next = { station: station + right, direction: direction + down };
  const isThere =
    next.station >= 0 &&
    next.station < stations &&
    next.direction >= 0 &&
    next.direction < directions;
  return isThere && (right !== 0 || down !== 0) ? next : null;
}

const moves: Record<string, [right: number, down: number]> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/**
 * Stations in banks that fit one above another, as even as they come: twelve at four a bank are 4, 4, 4;
 * five are 3, 2. Each bank is the first and the past-the-last station.
 */
export function stationBanks(stations: number, mostInBank: number): { from: number; to: number }[] {
  const banks = Math.ceil(stations / Math.max(1, mostInBank));
  const each = Math.ceil(stations / banks);
  return Array.from({ length: banks }, (_, bank) => ({
    from: bank * each,
    to: Math.min(stations, (bank + 1) * each),
  })).filter(({ from, to }) => to > from);
}
