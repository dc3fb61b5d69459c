import { describe, expect, it } from 'vitest';
import { lineOutlierCritical } from '@/lib/maths/control/line-outlier-critical';
import { lineOutlierTest } from '@/lib/maths/control/line-outlier-test';
import { grubbsCritical } from '@/lib/maths/statistics/grubbs-critical';
import { leastSquares } from '@/lib/maths/statistics/least-squares';
import { expectNear as near } from './near';

// T. E. Ugah and others, Journal of Applied Mathematics 2021, 1478843, table 1 (the bounds of Lund 1975
// for a straight line), read in a stored page; n, then 10 %, 5 % and 1 %. The page prints 0.4142 for n = 4
// at 1 %, a misprint of 1.4142: the bound can never pass sqrt(n - 2). Good to one in its fourth place.
const published: [n: number, ten: number, five: number, one: number][] = [
  [5, 1.6974, 1.7147, 1.7286],
  [6, 1.8838, 1.927, 1.9751],
  [7, 2.0142, 2.0799, 2.1667],
  [8, 2.1125, 2.1961, 2.3178],
  [9, 2.1911, 2.2883, 2.4398],
  [10, 2.2562, 2.3643, 2.5407],
  [14, 2.4414, 2.576, 2.8186],
  [20, 2.6126, 2.7651, 3.0575],
  [30, 2.7869, 2.9516, 3.2812],
];

describe('lineOutlierCritical', () => {
  it.each(published)('agrees with the published bounds for n = %i', (n, ten, five, one) => {
    near(lineOutlierCritical(n, 0.1), ten, 0.00011);
    near(lineOutlierCritical(n, 0.05), five, 0.00011);
    near(lineOutlierCritical(n, 0.01), one, 0.00011);
  });

  it('never passes the most that can be had, sqrt(n - 2)', () => {
    expect(lineOutlierCritical(4, 1e-6)).toBeLessThanOrEqual(Math.SQRT2);
    expect(lineOutlierCritical(4, 1e-6)).toBeGreaterThan(Math.SQRT2 - 1e-5);
  });

  it('stands to a line as the critical value of Grubbs stands to a mean: stricter by one degree', () => {
    // One degree of freedom more is spent on the slope; for many readings the two meet.
    expect(lineOutlierCritical(12, 0.05)).toBeLessThan(grubbsCritical(12, 0.05, 'two') * 1.07);
    near(lineOutlierCritical(20_000, 0.05), grubbsCritical(20_000, 0.05, 'two'), 0.001);
  });

  it.each([
    [3, 0.05, 'line-outlier-critical/not-whole'],
    [10.5, 0.05, 'line-outlier-critical/not-whole'],
    [10, 0, 'line-outlier-critical/significance'],
    [10, 1, 'line-outlier-critical/significance'],
  ])('refuses %f readings at %f', (n, significance, code) => {
    expect(() => lineOutlierCritical(n, significance)).toThrow(expect.objectContaining({ code }));
  });
});

describe('lineOutlierTest', () => {
  const x = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10];
  const y = [0.2, 1.1, 1.9, 3.2, 3.9, 9.4, 6.1, 7.0, 8.2, 8.9];

  it('is the t of the shift, fitted as a term of its own, in another dress', () => {
    // The definition (Cook and Weisberg 1982): t of the dummy's coefficient, with n - 3 degrees.
    const found = lineOutlierTest(x, y, 0.05);
    expect(found.index).toBe(5);
    const rows = x.map((value, i) => [value, i === 5 ? 1 : 0]);
    const { estimates, standardErrors } = leastSquares(rows, y, { constant: true });
    const t = estimates[2]! / standardErrors[2]!;
    const n = x.length;
    near(found.studentized, Math.sqrt(((n - 2) * t * t) / (n - 3 + t * t)), 1e-9);
    expect(found.isOutlier).toBe(true);
    expect(found.residual).toBeGreaterThan(0);
  });

  it('leaves alone what only scatters', () => {
    const calm = y.map((value, i) => (i === 5 ? 5.1 : value));
    expect(lineOutlierTest(x, calm, 0.05).isOutlier).toBe(false);
  });

  it('looks at the place on the line: an end pulls the line after it and is found all the same', () => {
    const end = [0.1, 0.9, 2.1, 3.0, 3.9, 5.1, 6.0, 6.9, 8.1, 14];
    expect(lineOutlierTest(x, end, 0.05)).toMatchObject({ index: 9, isOutlier: true });
  });

  it('does not move when everything is moved or scaled', () => {
    const found = lineOutlierTest(x, y, 0.05);
    const moved = lineOutlierTest(
      x.map((value) => value + 1e6),
      y.map((value) => 1e-6 * value - 40),
      0.05,
    );
    expect(moved.index).toBe(found.index);
    near(moved.studentized, found.studentized, 1e-6);
  });

  it('does not doubt a reading that holds the line by itself', () => {
    expect(lineOutlierTest([1, 1, 1, 1, 9], [0, 1, 2, 1, 50], 0.05).index).not.toBe(4);
  });

  it('refuses readings that all lie on one line, and too few', () => {
    expect(() => lineOutlierTest([1, 2, 3, 4], [0, 0, 0, 0], 0.05)).toThrow(
      expect.objectContaining({ code: 'line-outlier-test/no-spread' }),
    );
    expect(() => lineOutlierTest([1, 2, 3], [0, 1, 0], 0.05)).toThrow(
      expect.objectContaining({ code: 'line-outlier-critical/not-whole' }),
    );
  });
});
