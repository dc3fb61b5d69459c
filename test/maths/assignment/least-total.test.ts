import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { costMatrix, type CostMatrix, type Pair } from '@/lib/maths/assignment/cost-matrix';
import { leastTotal } from '@/lib/maths/assignment/least-total';
import { bruteForce, costsOf, sum } from './brute-force';
import { matrices } from './matrices';

describe('leastTotal', () => {
  it('agrees with brute force over every pairing up to 6 by 6, forbidden pairs and all', () => {
    fc.assert(
      fc.property(matrices(6), (matrix) => {
        const found = leastTotal(matrix);
        const brute = bruteForce(matrix);
        expectPairing(matrix, found.pairs);
        expect(found.pairs).toHaveLength(brute.size);
        expect(found.total).toBe(brute.total);
        expect(found.total).toBe(sum(costsOf(matrix, found.pairs)));
        expect(found.complete).toBe(brute.size === Math.min(matrix.rows, matrix.columns));
        if (found.complete) expectProved(matrix, found);
        else expect(found.certificate).toBeUndefined();
      }),
      { numRuns: 300 },
    );
  });

  it('agrees with brute force at 8 by 8', () => {
    const eight = fc
      .array(fc.array(fc.integer({ min: 0, max: 99 }), { minLength: 8, maxLength: 8 }), {
        minLength: 8,
        maxLength: 8,
      })
      .map(costMatrix);
    fc.assert(
      fc.property(eight, (matrix) => {
        let least = Infinity;
        const walk = (row: number, used: number, total: number): void => {
          if (row === 8) {
            least = Math.min(least, total);
            return;
          }
          for (let c = 0; c < 8; c += 1) {
            if ((used & (1 << c)) === 0)
              walk(row + 1, used | (1 << c), total + matrix.costs[row * 8 + c]!);
          }
        };
        walk(0, 0, 0);
        expect(leastTotal(matrix).total).toBe(least);
      }),
      { numRuns: 15 },
    );
  });

  it('proves a 60 by 80 choice by its own prices', () => {
    fc.assert(
      fc.property(fc.infiniteStream(fc.integer({ min: 0, max: 5000 })), (stream) => {
        const costs = Float64Array.from(stream.take(60 * 80));
        const wide = { rows: 60, columns: 80, costs };
        expectProved(wide, leastTotal(wide));
        const tall = { rows: 80, columns: 60, costs };
        expectProved(tall, leastTotal(tall));
      }),
      { numRuns: 5 },
    );
  });

  it('finds 5 in the textbook matrix and 15 for four machines and four jobs', () => {
    // Winston, Operations Research, Machineco example: 15, matrix and answer from memory.
    expect(
      leastTotal(
        costMatrix([
          [4, 1, 3],
          [2, 0, 5],
          [3, 2, 2],
        ]),
      ).total,
    ).toBe(5);
    const jobs = [
      [14, 5, 8, 7],
      [2, 12, 6, 5],
      [7, 8, 3, 9],
      [2, 4, 6, 10],
    ];
    expect(leastTotal(costMatrix(jobs)).total).toBe(15);
  });

  it('makes no pair where all are forbidden', () => {
    expect(
      leastTotal(
        costMatrix([
          [null, null],
          [null, null],
        ]),
      ),
    ).toEqual({
      pairs: [],
      total: 0,
      complete: false,
    });
  });

  it('proves choices of 40 by 40 and more with many ties and forbidden pairs', () => {
    // Costs 0 to 9 and a fifth forbidden: bids tie, fall back and are fought over.
    const drawn = fc.infiniteStream(fc.tuple(fc.integer({ min: 0, max: 9 }), fc.nat(4)));
    fc.assert(
      fc.property(drawn, fc.constantFrom(40, 41, 60), (stream, columns) => {
        const costs = Float64Array.from(
          [...stream.take(40 * columns)].map(([cost, odds]) => (odds === 0 ? Infinity : cost)),
        );
        const matrix = { rows: 40, columns, costs };
        const found = leastTotal(matrix);
        expectPairing(matrix, found.pairs);
        expect(found.complete).toBe(true);
        expectProved(matrix, found);
      }),
      { numRuns: 20 },
    );
  });

  it('gives the same total from any start', () => {
    const square = fc.integer({ min: 2, max: 7 }).chain((n) =>
      fc.tuple(
        fc
          .array(fc.array(fc.integer({ min: 0, max: 50 }), { minLength: n, maxLength: n }), {
            minLength: n,
            maxLength: n,
          })
          .map(costMatrix),
        fc.array(fc.integer({ min: -99, max: 99 }), { minLength: n, maxLength: n }),
        fc.array(fc.nat(n - 1), { minLength: n, maxLength: n }),
      ),
    );
    fc.assert(
      fc.property(square, ([matrix, prices, columns]) => {
        const columnPrices = Float64Array.from(prices);
        const columnOfRow = Int32Array.from(columns);
        for (const start of [columnPrices, { columnPrices }, { columnPrices, columnOfRow }]) {
          const started = leastTotal(matrix, start);
          expect(started.total).toBe(leastTotal(matrix).total);
          expectProved(matrix, started);
        }
      }),
    );
  });
});

function expectPairing(matrix: CostMatrix, pairs: readonly Pair[]): void {
  expect(new Set(pairs.map(([row]) => row)).size).toBe(pairs.length);
  expect(new Set(pairs.map(([, column]) => column)).size).toBe(pairs.length);
  expect(costsOf(matrix, pairs).every(Number.isFinite)).toBe(true);
}

/** The certificate proves the total without trusting how it was found. */
function expectProved(matrix: CostMatrix, found: ReturnType<typeof leastTotal>): void {
  const { rowPrices, columnPrices } = found.certificate!;
  const { rows, columns, costs } = matrix;
  const chosen = new Set(found.pairs.map(([row, column]) => row * columns + column));
  for (let row = 0; row < rows; row += 1) {
    for (let column = 0; column < columns; column += 1) {
      const k = row * columns + column;
      const reduced = costs[k]! - rowPrices[row]! - columnPrices[column]!;
      if (chosen.has(k)) expect(reduced).toBe(0);
      else expect(reduced).toBeGreaterThanOrEqual(0);
    }
  }
  const prices = sum([...rowPrices]) + sum([...columnPrices]);
  expect(prices).toBe(found.total);
  const [longer, partners] =
    rows < columns
      ? [columnPrices, new Set(found.pairs.map(([, column]) => column))]
      : [rowPrices, new Set(found.pairs.map(([row]) => row))];
  if (rows === columns) return;
  longer.forEach((price, piece) => {
    expect(price).toBeLessThanOrEqual(0);
    if (!partners.has(piece)) expect(price + 0).toBe(0);
  });
}
