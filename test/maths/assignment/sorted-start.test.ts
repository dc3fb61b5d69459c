import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { leastTotal } from '@/lib/maths/assignment/least-total';
import { sortedStart } from '@/lib/maths/assignment/sorted-start';
import { sum } from './brute-force';

describe('sortedStart', () => {
  it('proves the sorted order of any convex cost of a difference by itself', () => {
    const pieces = fc
      .integer({ min: 1, max: 30 })
      .chain((n) =>
        fc.tuple(
          fc.array(fc.integer({ min: 0, max: 200 }), { minLength: n, maxLength: n }),
          fc.array(fc.integer({ min: 0, max: 200 }), { minLength: n, maxLength: n }),
        ),
      );
    fc.assert(
      fc.property(pieces, fc.integer({ min: -50, max: 50 }), (sizes, aim) => {
        const [bores, shafts] = sizes;
        const n = bores.length;
        const cost = (r: number, c: number) => (bores[r]! - shafts[c]! - aim) ** 2;
        const prices = sortedStart(bores, shafts, cost);
        const order = (values: number[]) => values.toSorted((a, b) => a - b);
        const [b, s] = [order(bores), order(shafts)];
        const sortedTotal = sum(b.map((bore, k) => (bore - s[k]! - aim) ** 2));
        // The dual value of the prices is already the total: nothing is left to search for.
        const rowPrices = [...bores.keys()].map((r) =>
          Math.min(...[...shafts.keys()].map((c) => cost(r, c) - prices[c]!)),
        );
        expect(sum(rowPrices) + sum([...prices])).toBe(sortedTotal);
        const costs = Float64Array.from({ length: n * n }, (_, k) =>
          cost(Math.floor(k / n), k % n),
        );
        expect(leastTotal({ rows: n, columns: n, costs }, prices).total).toBe(sortedTotal);
      }),
    );
  });

  it('refuses unequal numbers', () => {
    expect(() => sortedStart([1, 2], [1], () => 0)).toThrow(
      expect.objectContaining({ code: 'sorted-start/shape' }),
    );
  });
});
