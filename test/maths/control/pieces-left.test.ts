import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { leastSquaresLine, type Line } from '@/lib/maths/control/least-squares-line';
import { lineBand } from '@/lib/maths/control/line-band';
import { piecesLeft, type PiecesLeftQuestion } from '@/lib/maths/control/pieces-left';

const exact = leastSquaresLine([1, 2, 3, 4], [0.001, 0.002, 0.003, 0.004]);

describe('piecesLeft', () => {
  it('counts the pieces one by one until the prediction limit first passes', () => {
    // The definition, piece by piece. The one-sided limit at c is the upper end of the two-sided band
    // at 2c - 1.
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: -3, max: 3 }), { minLength: 4, maxLength: 15 }),
        fc.integer({ min: 1, max: 200 }),
        fc.constantFrom(0.75, 0.9, 0.95),
        fc.boolean(),
        (wobble, room, confidence, falls) => {
          const sign = falls ? -1 : 1;
          const line = leastSquaresLine(
            wobble.map((_, i) => i + 1),
            wobble.map((off, i) => sign * (2 * (i + 1) + off)),
          );
          if (line.slope * sign <= 0) return;
          const limit = sign * (2 * wobble.length + room);
          let wanted = 0;
          for (;;) {
            const band = lineBand(line, wobble.length + wanted + 1, 2 * confidence - 1).newReading;
            if (falls ? band.low < limit - 1e-9 : band.high > limit + 1e-9) break;
            wanted += 1;
          }
          const left = piecesLeft(line, { lastPiece: wobble.length, limit, confidence });
          expect(left.withConfidence).toBe(wanted);
        },
      ),
    );
  });

  it('counts a piece exactly on the limit as inside', () => {
    // 0.1 + 0.2 arithmetic puts the meeting a hair before piece 20; it is on it.
    const left = piecesLeft(exact, { lastPiece: 4, limit: 0.02, confidence: 0.95 });
    expect(left).toEqual({ lastInsideByLine: 20, byLine: 16, withConfidence: 16 });
  });

  it('counts a piece exactly on a lower limit as inside', () => {
    const falling = leastSquaresLine([1, 2, 3, 4], [-0.001, -0.002, -0.003, -0.004]);
    const left = piecesLeft(falling, { lastPiece: 4, limit: -0.02, confidence: 0.95 });
    expect(left).toEqual({ lastInsideByLine: 20, byLine: 16, withConfidence: 16 });
  });

  it('forgives rounding only: half a thousandth of a piece past the limit is outside', () => {
    const left = piecesLeft(exact, { lastPiece: 4, limit: 0.0199995, confidence: 0.95 });
    expect(left).toEqual({ lastInsideByLine: 19, byLine: 15, withConfidence: 15 });
  });

  it('counts none once the limit is passed, and says which piece was the last inside', () => {
    const left = piecesLeft(exact, { lastPiece: 4, limit: 0.0025, confidence: 0.95 });
    expect(left).toEqual({ lastInsideByLine: 2, byLine: 0, withConfidence: 0 });
  });

  it('never allows more pieces with confidence than by the line', () => {
    const line = leastSquaresLine([1, 2, 3, 4, 5], [0, 3, 3, 6, 9]);
    const left = piecesLeft(line, { lastPiece: 5, limit: 60, confidence: 0.95 });
    expect(left.withConfidence).toBeLessThan(left.byLine);
  });

  it('asks more room for more confidence', () => {
    const line = leastSquaresLine([1, 2, 3, 4, 5, 6], [0, 3, 3, 6, 9, 9]);
    const at = (confidence: number) =>
      piecesLeft(line, { lastPiece: 6, limit: 60, confidence }).withConfidence;
    expect(at(0.99)).toBeLessThan(at(0.8));
  });

  it('stops counting at the largest whole number a double holds', () => {
    const slow = leastSquaresLine([1, 2, 3], [0, 1e-300, 2e-300]);
    const left = piecesLeft(slow, { lastPiece: 3, limit: 1, confidence: 0.95 });
    expect(left.byLine).toBe(Number.MAX_SAFE_INTEGER);
    expect(left.withConfidence).toBe(Number.MAX_SAFE_INTEGER);
  });

  it.each<[string, Partial<PiecesLeftQuestion> & { line?: Line }, string]>([
    ['a level line', { line: leastSquaresLine([1, 2, 3], [1, 1, 1]) }, 'a line that drifts'],
    ['half a piece', { lastPiece: 4.5 }, 'a whole last piece, got 4.5'],
    ['a last piece before the middle', { lastPiece: 2 }, 'the readings 2.5, got 2'],
    ['an infinite limit', { limit: Infinity }, 'a finite limit, got Infinity'],
    ['a confidence of 0', { confidence: 0 }, 'a confidence between 0 and 1, got 0'],
  ])('refuses %s', (_, { line = exact, ...broken }, message) => {
    expect(() =>
      piecesLeft(line, { lastPiece: 4, limit: 0.02, confidence: 0.95, ...broken }),
    ).toThrow(message);
  });
});
