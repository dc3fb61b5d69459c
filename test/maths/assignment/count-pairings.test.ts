import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { costMatrix } from '@/lib/maths/assignment/cost-matrix';
import { countPairings } from '@/lib/maths/assignment/count-pairings';
import { bruteForce } from './brute-force';

// Small spreads make many ties, and about a third of the pairs is forbidden.
const cell = fc.oneof(
  { weight: 2, arbitrary: fc.integer({ min: -9, max: 9 }) },
  { weight: 1, arbitrary: fc.constant(null) },
);
const matrices = (max: number, of: fc.Arbitrary<number | null> = cell) =>
  fc
    .tuple(fc.integer({ min: 1, max }), fc.integer({ min: 1, max }))
    .chain(([rows, columns]) =>
      fc.array(fc.array(of, { minLength: columns, maxLength: columns }), {
        minLength: rows,
        maxLength: rows,
      }),
    )
    .map(costMatrix);

describe('countPairings', () => {
  it('agrees with brute force where a complete pairing exists, and is zero elsewhere', () => {
    fc.assert(
      fc.property(matrices(5), (matrix) => {
        const brute = bruteForce(matrix);
        const complete = brute.size === Math.min(matrix.rows, matrix.columns);
        expect(countPairings(matrix)).toBe(complete ? brute.count : 0);
      }),
      { numRuns: 200 },
    );
  });

  it('counts the derangements of six as 265', () => {
    // Derangement numbers 1, 0, 1, 2, 9, 44, 265: de Montmort 1708, known to every text.
    const rows = [0, 1, 2, 3, 4, 5].map((r) => [0, 1, 2, 3, 4, 5].map((c) => (r === c ? null : 1)));
    expect(countPairings(costMatrix(rows))).toBe(265);
  });

  it('counts up to twenty pieces on a side', () => {
    expect(countPairings(costMatrix([Array.from({ length: 20 }, () => 1)]))).toBe(20);
  });

  it('refuses more pieces than can be counted', () => {
    const wide = costMatrix([Array.from({ length: 21 }, () => 1)]);
    expect(() => countPairings(wide)).toThrow(
      expect.objectContaining({ code: 'count-pairings/too-many' }),
    );
  });
});
