import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assignByLevels } from '@/lib/maths/assignment/assign-by-levels';
import { sum } from './brute-force';

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
