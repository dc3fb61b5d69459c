import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { extremes, firstAt } from '@/app/ui/charts/extremes';

const run = fc
  .array(fc.tuple(fc.integer({ min: 1, max: 5 }), fc.integer({ min: -50, max: 50 })), {
    minLength: 1,
    maxLength: 400,
  })
  .map((steps) => {
    let ordinal = 0;
    return {
      ordinals: steps.map(([gap]) => (ordinal += gap)),
      sizes: steps.map(([, size]) => size),
    };
  });

describe('extremes', () => {
  it('leaves no extreme out, makes no point up, and keeps the order', () => {
    fc.assert(
      fc.property(run, fc.integer({ min: 1, max: 60 }), ({ ordinals, sizes }, columns) => {
        const last = ordinals.at(-1)!;
        const chosen = extremes(ordinals, sizes, 0.5, last + 0.5, columns);
        const seen = chosen.map((i) => sizes[i]!);
        expect(Math.min(...seen)).toBe(Math.min(...sizes));
        expect(Math.max(...seen)).toBe(Math.max(...sizes));
        expect(chosen.every((i, k) => k === 0 || i > chosen[k - 1]!)).toBe(true);
        expect(chosen.every((i) => i >= 0 && i < ordinals.length)).toBe(true);
        expect(chosen[0]).toBe(0);
        expect(chosen.at(-1)).toBe(ordinals.length - 1);
        expect(chosen.length).toBeLessThanOrEqual(Math.max(4 * columns, 2 * columns));
      }),
    );
  });

  it('leaves no extreme of any column out', () => {
    fc.assert(
      fc.property(run, fc.integer({ min: 1, max: 20 }), ({ ordinals, sizes }, columns) => {
        const [from, to] = [0.5, ordinals.at(-1)! + 0.5];
        const chosen = new Set(extremes(ordinals, sizes, from, to, columns).map((i) => sizes[i]));
        const width = (to - from) / columns;
        for (let column = 0; column < columns; column += 1) {
          const inside = sizes.filter(
            (_, i) =>
              ordinals[i]! >= from + column * width && ordinals[i]! < from + (column + 1) * width,
          );
          if (inside.length === 0) continue;
          expect(chosen.has(Math.min(...inside))).toBe(true);
          expect(chosen.has(Math.max(...inside))).toBe(true);
        }
      }),
    );
  });

  it('gives every point of a stretch that has hardly more than columns', () => {
    const ordinals = [1, 2, 3, 7, 8, 9];
    expect(extremes(ordinals, [5, 4, 3, 2, 1, 0], 2, 8.5, 10)).toEqual([1, 2, 3, 4]);
    expect(extremes(ordinals, [5, 4, 3, 2, 1, 0], 20, 30, 10)).toEqual([]);
  });

  it('shows one far-out piece among a hundred thousand', () => {
    const ordinals = Array.from({ length: 100_000 }, (_, i) => i + 1);
    const sizes = ordinals.map((n) => (n === 61_803 ? -999 : n % 7));
    const chosen = extremes(ordinals, sizes, 0.5, 100_000.5, 300);
    expect(chosen.length).toBeLessThanOrEqual(1200);
    expect(chosen).toContain(61_802);
  });
});

describe('firstAt', () => {
  it('finds the first that is not below', () => {
    expect(firstAt([1, 3, 5], 0)).toBe(0);
    expect(firstAt([1, 3, 5], 3)).toBe(1);
    expect(firstAt([1, 3, 5], 4)).toBe(2);
    expect(firstAt([1, 3, 5], 6)).toBe(3);
    expect(firstAt([], 1)).toBe(0);
  });
});
