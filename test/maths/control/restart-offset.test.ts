import { describe, expect, it } from 'vitest';
import { restartOffset, type RestartQuestion } from '@/lib/maths/control/restart-offset';
import { expectNear } from './near';

// Worked by hand: piece 13 comes out at 11.9901 + 13 * 0.00033 = 11.99439.
const question: RestartQuestion = {
  interceptMm: 11.9901,
  slopeMmPerPiece: 0.00033,
  nextPiece: 13,
  restartAtMm: 11.987,
  dial: 'diameter',
};

// Doubles near 12 are 1.8e-15 apart.
const toleranceMm = 1e-12;

describe('restartOffset', () => {
  it('gives what the next piece would be and the way back on the size', () => {
    const offset = restartOffset(question);
    expectNear(offset.expectedNextMm, 11.99439, toleranceMm);
    expectNear(offset.offsetOnSizeMm, -0.00739, toleranceMm);
    expect(offset.offsetOnDialMm).toBe(offset.offsetOnSizeMm);
  });

  it('puts half of it on a radius dial', () => {
    const offset = restartOffset({ ...question, dial: 'radius' });
    expectNear(offset.offsetOnSizeMm, -0.00739, toleranceMm);
    expectNear(offset.offsetOnDialMm, -0.003695, toleranceMm);
  });

  it('is above zero when the size has to grow', () => {
    const shrinking = { ...question, slopeMmPerPiece: -0.001 };
    expect(restartOffset(shrinking).offsetOnSizeMm).toBeGreaterThan(0);
  });

  it('refuses a slope that is not finite', () => {
    expect(() => restartOffset({ ...question, slopeMmPerPiece: NaN })).toThrow(
      'got NaN at index 1',
    );
  });

  it('refuses a dial it does not know', () => {
    const dial = 'inch' as 'radius';
    expect(() => restartOffset({ ...question, dial })).toThrow('diameter or radius, got inch');
  });
});
