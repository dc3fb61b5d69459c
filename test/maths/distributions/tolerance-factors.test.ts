import { describe, expect, it } from 'vitest';
import { integral } from '@/lib/maths/distributions/integral';
import { normalPdf } from '@/lib/maths/distributions/normal-pdf';
import { oneSidedToleranceFactor } from '@/lib/maths/distributions/one-sided-tolerance-factor';
import { oneSidedToleranceFactorQuick } from '@/lib/maths/distributions/one-sided-tolerance-factor-quick';
import { chiSquareUpperTail } from '@/lib/maths/distributions/chi-square-upper-tail';
import { normalCdf } from '@/lib/maths/distributions/normal-cdf';
import { twoSidedToleranceFactor } from '@/lib/maths/distributions/two-sided-tolerance-factor';
import { twoSidedToleranceFactorQuick } from '@/lib/maths/distributions/two-sided-tolerance-factor-quick';
import { expectNear } from '../near';

describe('tolerance factors', () => {
  // Berthouex and Brown, Statistics for Environmental Engineers, table 21.1, as read for
  // test/reference/tolerance_intervals.json: two decimals, so half a unit of the last.
  it.each([
    [4, [5.37, 6.34, 8.22]],
    [6, [3.73, 4.42, 5.76]],
    [10, [2.86, 3.39, 4.44]],
    [25, [2.22, 2.64, 3.46]],
    [40, [2.06, 2.45, 3.22]],
  ])('two-sided at 95 %% agree with the printed table for %s values', (n, printed) => {
    [0.9, 0.95, 0.99].forEach((content, i) => {
      expectNear(twoSidedToleranceFactor(n, content, 0.95), printed[i]!, { abs: 0.0051 });
    });
  });

  it('two-sided exact factors solve the defining integral, worked another way', () => {
    const [n, content, confidence] = [7, 0.9, 0.95] as const;
    const k = twoSidedToleranceFactor(n, content, confidence);
    const halfWidth = (c: number) => {
      let [low, high] = [0, 20];
      for (let i = 0; i < 80; i += 1) {
        const r = (low + high) / 2;
        if (normalCdf(c + r) - normalCdf(c - r) < content) low = r;
        else high = r;
      }
      return low;
    };
    const inside = (z: number) =>
      normalPdf(z) *
      chiSquareUpperTail(((n - 1) * halfWidth(z / Math.sqrt(n)) ** 2) / (k * k), n - 1);
    expectNear(2 * integral(inside, 0, 9, 1e-12), confidence, { abs: 1e-10 });
  });

  it('one-sided ones shrink towards the normal quantile with more values', () => {
    const factors = [3, 10, 100, 1000].map((n) => oneSidedToleranceFactor(n, 0.95, 0.95));
    for (let i = 1; i < factors.length; i += 1) expect(factors[i]!).toBeLessThan(factors[i - 1]!);
    expect(factors[3]!).toBeGreaterThan(1.645);
    expect(factors[3]!).toBeLessThan(1.74);
  });

  it('quick ones are close where they are said to be', () => {
    const exact = twoSidedToleranceFactor(30, 0.95, 0.95);
    expectNear(twoSidedToleranceFactorQuick(30, 0.95, 0.95), exact, { rel: 0.01 });
    const oneSided = oneSidedToleranceFactor(43, 0.9, 0.99);
    expectNear(oneSidedToleranceFactorQuick(43, 0.9, 0.99), oneSided, { rel: 0.002 });
  });

  it('refuse what they cannot stand on', () => {
    expect(() => oneSidedToleranceFactor(1, 0.9, 0.9)).toThrow('got 1');
    expect(() => twoSidedToleranceFactor(2.5, 0.9, 0.9)).toThrow('got 2.5');
    expect(() => twoSidedToleranceFactor(5, 1, 0.9)).toThrow('content above 0 and below 1, got 1');
    expect(() => twoSidedToleranceFactorQuick(5, 0.9, 0)).toThrow('confidence above 0');
    expect(() => oneSidedToleranceFactorQuick(2, 0.9, 0.99)).toThrow('more values at a confidence');
  });
});
