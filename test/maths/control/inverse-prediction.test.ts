import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inversePrediction } from '@/lib/maths/control/inverse-prediction';
import { leastSquaresLine } from '@/lib/maths/control/least-squares-line';
import { lineBand } from '@/lib/maths/control/line-band';
import { expectNear } from './near';
import { oxygen } from './oxygen';

const line = leastSquaresLine(oxygen.x, oxygen.y);

// Pieces 1 to n with a wobble about a slope of +-1 to +-3 units a piece; scatter well below the drift.
const drifting = fc
  .tuple(
    fc.array(fc.integer({ min: -4, max: 4 }), { minLength: 5, maxLength: 20 }),
    fc.integer({ min: 1, max: 3 }),
    fc.boolean(),
  )
  .map(([wobble, rise, falls]) => {
    const slope = falls ? -rise : rise;
    return leastSquaresLine(
      wobble.map((_, i) => i + 1),
      wobble.map((off, i) => slope * (i + 1) + off),
    );
  });

describe('inversePrediction', () => {
  it('has ends where the drawn bands meet the height', () => {
    // What Fieller limits are: no formula of their own is used here, only the bands.
    fc.assert(
      fc.property(drifting, fc.integer({ min: -60, max: 60 }), (drift, y) => {
        const single = inversePrediction(drift, { y, confidence: 0.95, of: 1 });
        const mean = inversePrediction(drift, { y, confidence: 0.95, of: 'line' });
        if (!single.found || !mean.found) return;
        for (const [answer, band] of [
          [single, 'newReading'],
          [mean, 'meanLine'],
        ] as const) {
          const atLow = lineBand(drift, answer.low, 0.95)[band];
          const atHigh = lineBand(drift, answer.high, 0.95)[band];
          const scale = 1e-9 * (1 + Math.abs(y) + Math.abs(atHigh.high) + Math.abs(atLow.high));
          const rising = drift.slope > 0;
          expectNear(rising ? atLow.high : atLow.low, y, scale);
          expectNear(rising ? atHigh.low : atHigh.high, y, scale);
        }
        expect(single.low).toBeLessThanOrEqual(mean.low);
        expect(mean.low).toBeLessThanOrEqual(mean.x);
        expect(mean.x).toBeLessThanOrEqual(mean.high);
        expect(mean.high).toBeLessThanOrEqual(single.high);
      }),
    );
  });

  it('lies nearer to the line the more new readings are averaged', () => {
    expect(width(4)).toBeLessThan(width(1));
    expect(width('line')).toBeLessThan(width(4));
    expectNear(width(1e12), width('line'), 1e-6);
  });

  it('has a first-order standard error of s/b sqrt(1/m + h)', () => {
    // Draper and Smith; figures by hand: 1.086529 / 14.94748 * sqrt(1 + 1/20 + 1.7e-4).
    const answer = inversePrediction(line, { y: 92, confidence: 0.95, of: 1 });
    expectNear(answer.found ? answer.approxSe : NaN, 0.0744909, 1e-6);
  });

  it('gives no interval when the slope cannot be told from scatter', () => {
    const level = leastSquaresLine([1, 2, 3, 4, 5], [0, 2, -1, 1, 1]);
    const answer = inversePrediction(level, { y: 10, confidence: 0.95, of: 'line' });
    expect(answer.found).toBe(false);
    expect(answer.g).toBeGreaterThanOrEqual(1);
  });

  it('has a g that is 1 just where the slope interval touches zero', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: -9, max: 9 }), { minLength: 4, maxLength: 12 }),
        (y) => {
          const any = leastSquaresLine(
            y.map((_, i) => i),
            y,
          );
          const band = inversePrediction(any, { y: 0, confidence: 0.9, of: 'line' });
          // se and t from the band of the line in the middle: half-width t s / sqrt(n).
          const middle = lineBand(any, any.meanX, 0.9);
          const half =
            ((middle.meanLine.high - middle.line) * Math.sqrt(any.count)) /
            Math.sqrt(any.sumSquaresX);
          if (Math.abs(half - Math.abs(any.slope)) < 1e-9) return;
          expect(band.found).toBe(half < Math.abs(any.slope));
        },
      ),
    );
  });

  it('gives one place when the readings lie on the line without scatter', () => {
    const exact = leastSquaresLine([1, 2, 3, 4], [10, 20, 30, 40]);
    const answer = inversePrediction(exact, { y: 70, confidence: 0.95, of: 'line' });
    expect(answer).toEqual({ found: true, x: 7, low: 7, high: 7, approxSe: 0, g: 0 });
  });

  it('gives one place in the middle of readings without scatter', () => {
    const exact = leastSquaresLine([1, 2, 3], [10, 20, 30]);
    const answer = inversePrediction(exact, { y: 20, confidence: 0.95, of: 'line' });
    expect(answer).toEqual({ found: true, x: 2, low: 2, high: 2, approxSe: 0, g: 0 });
  });

  it('says no drift, with g infinite, for a line that is quite level', () => {
    const flat = leastSquaresLine([1, 2, 3], [5, 5, 5]);
    expect(inversePrediction(flat, { y: 6, confidence: 0.95, of: 1 })).toEqual({
      found: false,
      g: Infinity,
    });
  });

  it.each([
    ['no new readings', { of: 0 }, 'a whole number of new readings of 1 or more, got 0'],
    ['half a reading', { of: 1.5 }, 'got 1.5'],
    ['a height that is not finite', { y: NaN }, 'a finite height, got NaN'],
    ['a confidence of 95', { confidence: 95 }, 'a confidence between 0 and 1, got 95'],
  ])('refuses %s', (_, broken, message) => {
    expect(() => inversePrediction(line, { y: 92, confidence: 0.95, of: 1, ...broken })).toThrow(
      message,
    );
  });
});

function width(of: number | 'line'): number {
  const answer = inversePrediction(line, { y: 92, confidence: 0.95, of });
  return answer.found ? answer.high - answer.low : Infinity;
}
