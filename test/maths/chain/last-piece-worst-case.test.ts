import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lastPieceWorstCase } from '@/lib/maths/chain/last-piece-worst-case';
import { linearChain } from '@/lib/maths/chain/linear-chain';

const link = (coefficient: number, nominal: number, half: number) => ({
  coefficient,
  nominal,
  upper: half,
  lower: -half,
});
const others = [link(1, 1.75, 0.003), link(-1, 0.75, 0.001), link(-1, 0.12, 0.005)];

describe('lastPieceWorstCase', () => {
  it('agrees with the second part of the example of Shigley', () => {
    // 9th ed., example 1-3 b: for a least gap of 0.003 in, d = 0.867 in and the mean gap 0.013 in.
    const found = lastPieceWorstCase(others, { coefficient: -1, halfTolerance: 0.001 }, 0.003);
    expect(found.lastMiddle).toBeCloseTo(0.867, 12);
    expect(found.closingMiddle).toBeCloseTo(0.013, 12);
  });

  it('makes a chain that is just never less than wanted, whatever its coefficient', () => {
    const coefficients = fc.constantFrom(1, -1, 2, -0.5);
    const halves = fc.double({ min: 0, max: 0.1, noNaN: true });
    fc.assert(
      fc.property(coefficients, halves, (coefficient, half) => {
        const last = { coefficient, halfTolerance: half };
        const { lastMiddle, closingMiddle } = lastPieceWorstCase(others, last, 0.25);
        const whole = linearChain([...others, link(coefficient, lastMiddle, half)]);
        expect(whole.worst.least).toBeCloseTo(0.25, 10);
        expect(whole.middle).toBeCloseTo(closingMiddle, 10);
      }),
    );
  });

  it.each([
    ['last-piece-worst-case/no-link', [], { coefficient: 1, halfTolerance: 0 }],
    ['last-piece-worst-case/last', others, { coefficient: 0, halfTolerance: 0 }],
    ['last-piece-worst-case/last', others, { coefficient: 1, halfTolerance: -1 }],
  ])('refuses by %s', (code, chain, last) => {
    expect(() => lastPieceWorstCase(chain, last, 0.1)).toThrow(expect.objectContaining({ code }));
  });
});
