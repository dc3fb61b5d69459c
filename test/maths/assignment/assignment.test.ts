import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assignByLevels } from '@/lib/maths/assignment/assign-by-levels';
import { assignRows } from '@/lib/maths/assignment/assign-rows';
import { bottleneck } from '@/lib/maths/assignment/bottleneck';
import { costMatrix, type CostMatrix, type Pair } from '@/lib/maths/assignment/cost-matrix';
import { countPairings } from '@/lib/maths/assignment/count-pairings';
import { largestPairing } from '@/lib/maths/assignment/largest-pairing';
import { leastTotal } from '@/lib/maths/assignment/least-total';
import { sortedStart } from '@/lib/maths/assignment/sorted-start';
import { bruteForce, costsOf, sum } from './brute-force';

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
          if (row === 8) least = Math.min(least, total);
          for (let c = 0; row < 8 && c < 8; c += 1) {
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
        const costs = Float64Array.from([...stream.take(60 * 80)]);
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
      ),
    );
    fc.assert(
      fc.property(square, ([matrix, prices]) => {
        const started = leastTotal(matrix, Float64Array.from(prices));
        expect(started.total).toBe(leastTotal(matrix).total);
        expectProved(matrix, started);
      }),
    );
  });
});

describe('assignRows', () => {
  it('refuses more rows than columns and a start that does not fit', () => {
    const tall = costMatrix([[1], [2]]);
    const code = { code: 'assign-rows/shape' };
    expect(() => assignRows(tall)).toThrow(expect.objectContaining(code));
    const wide = costMatrix([[1, 2]]);
    expect(() => assignRows(wide, Float64Array.of(0, 0))).toThrow(expect.objectContaining(code));
    const square = costMatrix([[1]]);
    expect(() => assignRows(square, Float64Array.of(0, 0))).toThrow(expect.objectContaining(code));
  });

  it('answers undefined when some row has no column', () => {
    expect(
      assignRows(
        costMatrix([
          [1, null],
          [2, null],
        ]),
      ),
    ).toBeUndefined();
    expect(
      assignRows(
        costMatrix([
          [1, 2],
          [null, null],
        ]),
      ),
    ).toBeUndefined();
    expect(
      assignRows(
        costMatrix([
          [1, null, 4],
          [2, null, null],
          [1, null, 3],
        ]),
      ),
    ).toBeUndefined();
  });
});

describe('assignByLevels', () => {
  it('puts the first cost first, the second second, whatever their sizes', () => {
    const levels = fc.integer({ min: 1, max: 5 }).chain((n) => {
      const level = fc.array(fc.integer({ min: 0, max: 3 }), {
        minLength: n * n,
        maxLength: n * n,
      });
      return fc.tuple(fc.constant(n), level, level, level);
    });
    fc.assert(
      fc.property(levels, ([n, ...three]) => {
        const columnOfRow = assignByLevels(
          n,
          three.map((level) => Float64Array.from(level)),
        )!;
        const totals = (columns: readonly number[]) =>
          three.map((level) => sum(columns.map((column, row) => level[row * n + column]!)));
        const best = permutations(n)
          .map(totals)
          .reduce((least, one) => (comesBefore(one, least) ? one : least));
        expect(totals([...columnOfRow])).toEqual(best);
      }),
    );
  });

  it('answers undefined when the forbidden pairs leave no complete assignment', () => {
    const forbidden = Float64Array.of(0, Infinity, 0, Infinity);
    expect(assignByLevels(2, [forbidden])).toBeUndefined();
    expect(assignByLevels(2, [new Float64Array(4), forbidden])).toBeUndefined();
  });

  it('refuses levels of the wrong size and fractions above the last level', () => {
    expect(() => assignByLevels(2, [])).toThrow(
      expect.objectContaining({ code: 'assign-by-levels/shape' }),
    );
    expect(() => assignByLevels(2, [new Float64Array(3)])).toThrow(
      expect.objectContaining({ code: 'assign-by-levels/shape' }),
    );
    const half = Float64Array.of(0.5);
    expect(() => assignByLevels(1, [half, half])).toThrow(
      expect.objectContaining({ code: 'assign-by-levels/not-whole' }),
    );
    expect([...assignByLevels(1, [half])!]).toEqual([0]);
  });
});

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

describe('largestPairing', () => {
  it('makes as many pairs as brute force finds, and proves that more are impossible', () => {
    fc.assert(
      fc.property(matrices(6), (matrix) => {
        const { pairs, complete, shortage } = largestPairing(matrix);
        expectPairing(matrix, pairs);
        expect(pairs).toHaveLength(bruteForce(matrix).size);
        expect(complete).toBe(pairs.length === Math.min(matrix.rows, matrix.columns));
        // Hall: the rows named have partners among the columns named only.
        for (const row of shortage.rows) {
          for (let column = 0; column < matrix.columns; column += 1) {
            const isLegal = matrix.costs[row * matrix.columns + column]! < Infinity;
            if (isLegal) expect(shortage.columns).toContain(column);
          }
        }
        expect(shortage.rows.length - shortage.columns.length).toBe(matrix.rows - pairs.length);
      }),
      { numRuns: 300 },
    );
  });

  it('names the two rows that can only take the same column', () => {
    const rows = [
      [1, null, null],
      [2, null, null],
      [null, 3, 4],
    ];
    expect(largestPairing(costMatrix(rows)).shortage).toEqual({ rows: [0, 1], columns: [0] });
  });
});

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
    const rows = Array.from({ length: 6 }, (_, r) =>
      Array.from({ length: 6 }, (_, c) => (r === c ? null : 1)),
    );
    expect(countPairings(costMatrix(rows))).toBe(265);
  });

  it('refuses more pieces than can be counted', () => {
    const wide = costMatrix([Array.from({ length: 21 }, () => 1)]);
    expect(() => countPairings(wide)).toThrow(
      expect.objectContaining({ code: 'count-pairings/too-many' }),
    );
  });
});

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
        const rowPrices = bores.map((_, r) =>
          Math.min(...shafts.map((_, c) => cost(r, c) - prices[c]!)),
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

describe('costMatrix', () => {
  it.each([
    ['cost-matrix/shape', []],
    ['cost-matrix/shape', [[]]],
    ['cost-matrix/shape', [[1, 2], [3]]],
    ['cost-matrix/cost', [[Infinity]]],
    ['cost-matrix/cost', [[NaN]]],
  ])('refuses by %s', (code, rows) => {
    expect(() => costMatrix(rows)).toThrow(expect.objectContaining({ code }));
  });
});

function permutations(n: number): number[][] {
  if (n === 0) return [[]];
  return permutations(n - 1).flatMap((shorter) =>
    Array.from({ length: n }, (_, at) => [...shorter.slice(0, at), n - 1, ...shorter.slice(at)]),
  );
}

function comesBefore(a: readonly number[], b: readonly number[]): boolean {
  const k = a.findIndex((value, i) => value !== b[i]);
  return k >= 0 && a[k]! < b[k]!;
}
