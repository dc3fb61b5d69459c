import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { costMatrix } from '@/lib/maths/assignment/cost-matrix';
import { countPairings } from '@/lib/maths/assignment/count-pairings';
import { bruteForce } from './brute-force';
import { matrices } from './matrices';

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
