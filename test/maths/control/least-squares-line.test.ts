import { readFileSync } from 'node:fs';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { leastSquaresLine } from '@/lib/maths/control/least-squares-line';
import { expectNear } from './near';
import { oxygen } from './oxygen';

type Norris = { id: string; inputs: { x: number[]; y: number[] } };

// NIST StRD, Norris: certified to 15 digits. Nine are asked for: the set is graded easy for a method
// that takes the means off first.
const certified = {
  intercept: -0.262323073774029,
  interceptSe: 0.232818234301152,
  slope: 1.00211681802045,
  slopeSe: 0.000429796848199937,
  residualSd: 0.884796396144373,
};

describe('leastSquaresLine', () => {
  it('gives the certified line through the Norris readings', () => {
    const line = leastSquaresLine(norris().x, norris().y);
    expect(line.degreesOfFreedom).toBe(34);
    for (const [name, wanted] of Object.entries(certified)) {
      expectNear(line[name as keyof typeof certified], wanted, 1e-9 * Math.abs(wanted));
    }
  });

  it('gives the published line of oxygen purity on hydrocarbon level', () => {
    // Montgomery and Runger, Example 11-1: 14.947 and 74.283, printed to five decimals from sums
    // rounded to five; 1e-4 is what that rounding moves.
    const line = leastSquaresLine(oxygen.x, oxygen.y);
    expectNear(line.slope, 14.94748, 1e-4);
    expectNear(line.intercept, 74.28331, 1e-4);
  });

  it('keeps its digits on clock times in milliseconds', () => {
    // One piece every 90 s on 1 March 2026; whole milliseconds, so the times are exact.
    const pieces = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12];
    const sizes = [2, 9, 7, 15, 18, 14, 23, 25, 31, 29, 36, 38].map((tenths) => tenths / 1e4);
    const times = pieces.map((piece) => 1_772_352_000_000 + 90_000 * piece);
    const byPiece = leastSquaresLine(pieces, sizes);
    const byTime = leastSquaresLine(times, sizes);
    // Sums of twelve products: a dozen roundings of 1.1e-16.
    expectNear(byTime.slope * 90_000, byPiece.slope, 1e-14 * byPiece.slope);
    expectNear(byTime.residualSd, byPiece.residualSd, 1e-13 * byPiece.residualSd);
    expectNear(byTime.slopeSe * 90_000, byPiece.slopeSe, 1e-13 * byPiece.slopeSe);
  });

  it('gives no slope and no scatter at all when every size is the same', () => {
    const line = leastSquaresLine(
      [1, 2, 3, 4, 5, 6, 7],
      Array.from({ length: 7 }, () => 11.9903),
    );
    expect([line.slope, line.residualSd, line.slopeSe]).toEqual([0, 0, 0]);
  });

  it('does not change slope or scatter when a constant is added to every reading', () => {
    fc.assert(
      fc.property(readings, fc.integer({ min: -1000, max: 1000 }), (y, shift) => {
        const x = y.map((_, i) => i);
        const line = leastSquaresLine(x, y);
        const moved = leastSquaresLine(
          x,
          y.map((value) => value + shift),
        );
        // Readings and shift are whole, so the sums are exact; only divisions round.
        expectNear(moved.slope, line.slope, 1e-12);
        expectNear(moved.residualSd, line.residualSd, 1e-10);
      }),
    );
  });

  it('leaves residuals that neither add up to anything nor lean along x', () => {
    fc.assert(
      fc.property(readings, (y) => {
        const x = y.map((_, i) => i * i + 1);
        const line = leastSquaresLine(x, y);
        const residuals = y.map((value, i) => value - line.intercept - line.slope * x[i]!);
        const sum = residuals.reduce((a, b) => a + b, 0);
        const lean = residuals.reduce((a, b, i) => a + b * (x[i]! - line.meanX), 0);
        expectNear(sum, 0, 1e-9);
        expectNear(lean, 0, 1e-6);
      }),
    );
  });

  it.each([
    ['two readings', [1, 2], [1, 2], 'at least 3 readings, got 2'],
    ['lists of different lengths', [1, 2, 3], [1, 2], 'one y for each x, got 3 and 2'],
    ['NaN', [1, 2, 3], [1, NaN, 3], 'finite y, got NaN at index 1'],
    ['an infinite x', [1, Infinity, 3], [1, 2, 3], 'finite x, got Infinity at index 1'],
    ['one x only', [4, 4, 4], [1, 2, 3], 'two or more different x, got only 4'],
  ])('refuses %s', (_, x, y, message) => {
    expect(() => leastSquaresLine(x, y)).toThrow(message);
  });
});

const readings = fc.array(fc.integer({ min: -200, max: 200 }), { minLength: 3, maxLength: 40 });

function norris(): Norris['inputs'] {
  const path = new URL('../../reference/strd_regression.json', import.meta.url);
  const set = JSON.parse(readFileSync(path, 'utf8')) as { cases: Norris[] };
  return set.cases.find((one) => /norris/i.test(one.id))!.inputs;
}
