import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { normalDraws } from '@/lib/maths/metrology/normal-draws';
import { seededRandom } from '@/lib/maths/metrology/seeded-random';
import { sortedDraws } from '@/lib/maths/metrology/sorted-draws';

/** The sort of the language, with zeros of either sign made one. */
const bySort = (values: Float64Array) => values.map((value) => value + 0).sort();
const expectSorted = (values: Float64Array) => {
  const kept = values.slice();
  const sorted = sortedDraws(values);
  expect(sorted.map((value) => value + 0)).toEqual(bySort(values));
  expect(values).toEqual(kept);
};

describe('sortedDraws', () => {
  it('gives what sorting gives, for any finite values, and leaves them as they were', () => {
    const finite = fc.double({ noNaN: true, noDefaultInfinity: true });
    const few = fc.oneof(fc.constantFrom(0, -0, 1, 5e-324, 1.7e308, -1.7e308), finite);
    fc.assert(
      fc.property(fc.array(few, { maxLength: 200 }), (values) => {
        expectSorted(Float64Array.from(values));
      }),
    );
  });

  it('sorts many draws, lopsided ones, ties and a wild value among them', () => {
    const normal = normalDraws(seededRandom(3));
    const draws = Float64Array.from({ length: 50_000 }, () => normal());
    expectSorted(draws);
    expectSorted(draws.map((x) => Math.exp(5 * x)));
    expectSorted(draws.map((x) => Math.round(x)));
    expectSorted(draws.map(() => 3));
    expectSorted(draws.toSorted().reverse());
  });

  it('takes no longer than the sort of the language where all but one fall together', () => {
    // Insertion alone would move 10^10 values, some ten seconds: past the time a test is given.
    const next = seededRandom(4);
    const values = Float64Array.from({ length: 300_000 }, (_, i) => (i === 777 ? 1e12 : next()));
    const sorted = sortedDraws(values);
    expect(bySort(values).every((value, i) => value === sorted[i])).toBe(true);
  });
});
