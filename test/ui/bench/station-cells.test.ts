import { describe, expect, it } from 'vitest';
import { placeAfter, stationBanks } from '@/app/ui/bench/station-cells';

describe('placeAfter', () => {
  const from = { station: 1, direction: 1 };

  it.each([
    ['ArrowLeft', { station: 0, direction: 1 }],
    ['ArrowRight', { station: 2, direction: 1 }],
    ['ArrowUp', { station: 1, direction: 0 }],
    ['ArrowDown', null],
    ['Enter', null],
  ])('goes with %s along the part and across it, not over the edge', (key, to) => {
    expect(placeAfter(from, key, 3, 2)).toEqual(to);
  });

  it('goes nowhere on a part with one place', () => {
    for (const key of ['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown']) {
      expect(placeAfter({ station: 0, direction: 0 }, key, 1, 1)).toBeNull();
    }
  });
});

describe('stationBanks', () => {
  it.each([
    [3, 4, [3]],
    [12, 4, [4, 4, 4]],
    [5, 4, [3, 2]],
    [7, 3, [3, 3, 1]],
    [1, 0, [1]],
    [4, 1, [1, 1, 1, 1]],
  ])('puts %i stations at most %i a bank as evenly as they come', (stations, most, sizes) => {
    const banks = stationBanks(stations, most);
    expect(banks.map(({ from, to }) => to - from)).toEqual(sizes);
    expect(banks[0]!.from).toBe(0);
    expect(banks.at(-1)!.to).toBe(stations);
    banks.slice(1).forEach(({ from }, index) => expect(from).toBe(banks[index]!.to));
  });
});
