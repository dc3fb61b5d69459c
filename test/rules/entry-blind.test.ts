import { describe, expect, it } from 'vitest';
import { blindChoice, entryBlind } from '@/lib/rules/entry-blind';

const feature = { stations: ['top', 'foot'], directions: ['A', 'B'] };
type Reading = { station: string; direction: string; state: 'counted' | 'held' | 'struck' };
const read = (place: string, state: Reading['state'] = 'counted'): Reading => ({
  station: place.split(' ')[0]!,
  direction: place.split(' ')[1]!,
  state,
});

describe('entryBlind', () => {
  it('hides nothing unless it is chosen', () => {
    expect(entryBlind('off', feature, [])).toBeNull();
    expect(entryBlind('off', feature, [read('top A')])).toBeNull();
  });

  it('hides every place from before the first reading until the last', () => {
    expect(entryBlind('plan', feature, [])).toEqual({ taken: 0, of: 4, set: 0 });
    const three = [read('top A'), read('top B'), read('foot A')];
    expect(entryBlind('plan', feature, three)).toEqual({ taken: 3, of: 4, set: 0 });
    expect(entryBlind('plan', feature, [...three, read('foot B')])).toBeNull();
  });

  it('counts a held reading and not a struck one', () => {
    const most = [read('top A'), read('top B', 'held'), read('foot A')];
    expect(entryBlind('plan', feature, most)).toEqual({ taken: 3, of: 4, set: 0 });
    expect(entryBlind('plan', feature, [...most, read('foot B', 'struck')])).not.toBeNull();
  });

  it('is not done while one of its readings is asked about', () => {
    const three = [read('top A'), read('top B'), read('foot A')];
    const last = (state: Reading['state']) => [...three, read('foot B', state)];
    expect(entryBlind('plan', feature, last('held'))).toEqual({ taken: 4, of: 4, set: 0 });
    expect(entryBlind(2, feature, last('held'))).toEqual({ taken: 2, of: 2, set: 1 });
    expect(entryBlind('plan', feature, last('counted'))).toBeNull();
    expect(entryBlind(2, feature, last('counted'))).toBeNull();
  });

  it('does not take two readings of one place for two places', () => {
    const same = [read('top A'), read('top A'), read('top A'), read('top A')];
    expect(entryBlind('plan', feature, same)).toEqual({ taken: 1, of: 4, set: 0 });
  });

  it('hides a set of a number until it is done, and the next set again', () => {
    const times = (n: number) => Array.from({ length: n }, () => read('top A'));
    expect([0, 1, 2, 3, 4, 6].map((n) => entryBlind(3, feature, times(n)))).toEqual([
      { taken: 0, of: 3, set: 0 },
      { taken: 1, of: 3, set: 0 },
      { taken: 2, of: 3, set: 0 },
      null,
      { taken: 1, of: 3, set: 1 },
      null,
    ]);
    expect(entryBlind(3, feature, [...times(2), read('top A', 'struck')])).toMatchObject({
      taken: 2,
    });
  });
});

describe('blindChoice', () => {
  it.each([
    ['plan', 'plan'],
    ['5', 5],
    ['off', 'off'],
    [null, 'off'],
    ['', 'off'],
    ['1', 'off'],
    ['2.5', 'off'],
    ['999', 'off'],
    ['often', 'off'],
  ])('takes the remembered %j for %j', (word, choice) => {
    expect(blindChoice(word)).toBe(choice);
  });
});
