import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitLimits } from '@/lib/maths/iso286/fit-limits';

describe('fitLimits', () => {
  // ISO 286-2 at 25, 30 and 20 mm, from memory of the standard; whole micrometres, exact.
  it.each([
    ['H7/g6', 25, 7, 41, 'clearance'],
    ['H7/h6', 25, 0, 34, 'clearance'],
    ['H7/k6', 30, -15, 19, 'transition'],
    ['H7/p6', 20, -35, -1, 'interference'],
    ['F8/h6', 16, 16, 54, 'clearance'],
  ])('gives %s at %d mm %d to %d micrometres', (text, nominal, min, max, kind) => {
    expect(fitLimits(text, nominal)).toMatchObject({
      minClearanceUm: min,
      maxClearanceUm: max,
      kind,
    });
  });

  it('calls a fit with a largest clearance of exactly zero an interference', () => {
    // H6/p5 at 40 mm: +16/0 with +37/+26 is interference; H7/p6 at 2 mm: +10/0 with +12/+6 is not.
    expect(fitLimits('H6/p5', 40).kind).toBe('interference');
    expect(fitLimits('H7/p6', 2).kind).toBe('transition');
    // H6/p6 at 3 mm: the hole ends at +6 where the shaft begins.
    expect(fitLimits('H6/p6', 3)).toMatchObject({ maxClearanceUm: 0, kind: 'interference' });
  });

  it('adds up both tolerances in the spread of the clearance', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 3.1, max: 500, noNaN: true }),
        fc.constantFrom('H7/g6', 'K7/h6', 'H8/f7', 'P9/h9', 'JS7/js6'),
        (nominal, text) => {
          const { hole, shaft, minClearanceUm, maxClearanceUm } = fitLimits(text, nominal);
          const spread = hole.upperUm - hole.lowerUm + shaft.upperUm - shaft.lowerUm;
          expect(maxClearanceUm - minClearanceUm).toBe(spread);
        },
      ),
    );
  });

  it('takes blanks about the stroke', () => {
    expect(fitLimits('H7 / g6', 25).minClearanceUm).toBe(7);
  });

  it.each(['g6/H7', 'H7', 'H7/', '/g6', 'H7/G6', 'H7/g6/h6'])('refuses %j', (text) => {
    expect(() => fitLimits(text, 25)).toThrow(
      expect.objectContaining({
        code: expect.stringMatching(/^(fit-limits|tolerance-class)\/text$/),
      }),
    );
  });
});
