import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { costMatrix } from '@/lib/maths/assignment/cost-matrix';
import { sortedPairs } from '@/lib/maths/assignment/sorted-pairs';
import { bruteForce, sum } from './brute-force';

const sizes = (n: number) =>
  fc.array(fc.integer({ min: 0, max: 30 }), { minLength: n, maxLength: n });
const both = fc.integer({ min: 1, max: 6 }).chain((n) => fc.tuple(sizes(n), sizes(n)));

describe('sortedPairs', () => {
  it('has the least total and the best worst pair of all pairings, for convex costs', () => {
    const shapes = fc.constantFrom<(off: number) => number>(
      (off) => Math.abs(off),
      (off) => off * off,
      (off) => (off < 0 ? -3 * off : off),
    );
    fc.assert(
      fc.property(both, fc.integer({ min: -20, max: 20 }), shapes, ([rows, columns], aim, cost) => {
        const costs = rows.map((row) => columns.map((column) => cost(row - column - aim)));
        const brute = bruteForce(costMatrix(costs));
        const chosen = sortedPairs(rows, columns).map(([r, c]) => costs[r]![c]!);
        expect(sum(chosen)).toBe(brute.total);
        expect(Math.max(...chosen)).toBe(brute.worst);
      }),
      { numRuns: 300 },
    );
  });

  it('is inside limits whenever some complete pairing is', () => {
    const limits = fc.tuple(fc.integer({ min: -20, max: 20 }), fc.integer({ min: 0, max: 20 }));
    fc.assert(
      fc.property(both, limits, ([rows, columns], [low, width]) => {
        const isInside = (off: number) => off >= low && off <= low + width;
        const legal = rows.map((row) =>
          columns.map((column) => (isInside(row - column) ? 1 : null)),
        );
        const sorted = sortedPairs(rows, columns);
        const isLegal = sorted.every(([r, c]) => isInside(rows[r]! - columns[c]!));
        expect(isLegal).toBe(bruteForce(costMatrix(legal)).size === rows.length);
      }),
      { numRuns: 300 },
    );
  });

  it('uses every row and every column once, smallest first', () => {
    expect(sortedPairs([3, 1, 2], [5, 9, 7])).toEqual([
      [1, 0],
      [2, 2],
      [0, 1],
    ]);
  });
});
