import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bottleneck } from '@/lib/maths/assignment/bottleneck';
import { costMatrix, type CostMatrix, type Pair } from '@/lib/maths/assignment/cost-matrix';
import { leastTotal } from '@/lib/maths/assignment/least-total';
import { bruteForce, costsOf } from './brute-force';
import { matrices } from './matrices';

describe('bottleneck', () => {
  it('agrees with brute force over every pairing up to 6 by 6', () => {
    fc.assert(
      fc.property(matrices(6), (matrix) => {
        const found = bottleneck(matrix);
        const brute = bruteForce(matrix);
        if (brute.size === 0) {
          expect(found).toBeUndefined();
          return;
        }
        expectPairing(matrix, found!.pairs);
        expect(found!.pairs).toHaveLength(brute.size);
        expect(found!.worst).toBe(brute.worst);
        expect(found!.total).toBe(brute.totalAtWorst);
        expect(found!.complete).toBe(brute.size === Math.min(matrix.rows, matrix.columns));
      }),
      { numRuns: 300 },
    );
  });

  it('is another aim than the least total', () => {
    const matrix = costMatrix([
      [1, 6],
      [6, 10],
    ]);
    expect(leastTotal(matrix).total).toBe(11);
    expect(bottleneck(matrix)).toMatchObject({ worst: 6, total: 12 });
  });
});

function expectPairing(matrix: CostMatrix, pairs: readonly Pair[]): void {
  expect(new Set(pairs.map(([row]) => row)).size).toBe(pairs.length);
  expect(new Set(pairs.map(([, column]) => column)).size).toBe(pairs.length);
  expect(costsOf(matrix, pairs).every(Number.isFinite)).toBe(true);
}
