import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { closingDistribution, type UncertainLink } from '@/lib/maths/chain/closing-distribution';
import { normalCdf } from '@/lib/maths/distributions/normal-cdf';
import { monteCarlo } from '@/lib/maths/metrology/monte-carlo';

const link = (shape: UncertainLink['shape'], half: number, coefficient = 1): UncertainLink => ({
  coefficient,
  centre: 0,
  shape,
  half,
});

describe('closingDistribution', () => {
  it('is the normal distribution of the root sum of squares for normal links', () => {
    // Montgomery and Runger, casing less door: sd sqrt(0.125^2 + 0.0625^2) = 0.1398 in, gap above a
    // quarter inch with probability 0.187 by their table of two decimals in z.
    const found = closingDistribution([
      { coefficient: 1, centre: 24, shape: 'normal', half: 0.125 },
      { coefficient: -1, centre: 23.875, shape: 'normal', half: 0.0625 },
    ]);
    expect(found.mean).toBe(0.125);
    expect(found.sd).toBeCloseTo(0.1398, 4);
    expect(1 - found.cdf(0.25)).toBeCloseTo(0.187, 2);
    expect(found.cdf(0.2)).toBeCloseTo(normalCdf((0.2 - 0.125) / found.sd), 12);
  });

  it('is a straight line for one rectangle', () => {
    const found = closingDistribution([link('rectangular', 2)]);
    expect([-3, -2, -1, 0, 1, 2, 3].map(found.cdf)).toEqual([0, 0, 0.25, 0.5, 0.75, 1, 1]);
    expect(found.quantile(0.9)).toBeCloseTo(1.6, 10);
  });

  it('is a triangle for two equal rectangles, and for a triangular link', () => {
    // Triangle of half width 2: F(y) = (y + 2)^2/8 below the middle.
    const wanted = (y: number) => (y <= 0 ? (y + 2) ** 2 / 8 : 1 - (2 - y) ** 2 / 8);
    const two = closingDistribution([link('rectangular', 1), link('rectangular', 1, -1)]);
    const one = closingDistribution([link('triangular', 2)]);
    for (const y of [-1.9, -1, -0.3, 0, 0.5, 1.7]) {
      expect(Math.abs(two.cdf(y) - wanted(y))).toBeLessThan(1e-9);
      expect(Math.abs(one.cdf(y) - wanted(y))).toBeLessThan(1e-9);
    }
  });

  it('is the distribution of Irwin and Hall for four equal rectangles', () => {
    // Sum of four uniform on 0 to 1 [Irwin 1927, Hall 1927]: F(x) = sum (-1)^k C(4,k) (x-k)^4 / 24.
    const hall = (x: number) =>
      [1, -4, 6, -4, 1].reduce((sum, c, k) => sum + (x > k ? c * (x - k) ** 4 : 0), 0) / 24;
    const four = closingDistribution([1, 2, 3, 4].map(() => link('rectangular', 0.5)));
    for (const x of [0.2, 0.7, 1.3, 2, 2.9, 3.9]) {
      expect(Math.abs(four.cdf(x - 2) - hall(x))).toBeLessThan(1e-9);
    }
  });

  it('joins a rectangle and a normal as plain integration does', () => {
    const found = closingDistribution([link('rectangular', 0.2), link('normal', 0.05)]);
    for (const y of [-0.3, -0.19, 0, 0.1, 0.25]) {
      // Midpoint rule over the rectangle, 4000 steps: error below 1e-8.
      let sum = 0;
      for (let k = 0; k < 4000; k += 1) {
        sum += normalCdf((y - (-0.2 + (0.4 * (k + 0.5)) / 4000)) / 0.05) / 4000;
      }
      expect(Math.abs(found.cdf(y) - sum)).toBeLessThan(1e-7);
    }
  });

  it('copes with one link that dwarfs the others', () => {
    const small = closingDistribution([link('rectangular', 1), link('rectangular', 0.001)]);
    // Trapezoid: flat between -0.999 and 0.999.
    expect(Math.abs(small.cdf(0.5) - 0.75)).toBeLessThan(1e-8);
    expect(Math.abs(small.cdf(-1) - 0.001 / 8 / 1)).toBeLessThan(1e-7);
  });

  it('agrees with a Monte Carlo run of a mixed chain', () => {
    const links: UncertainLink[] = [
      { coefficient: 1, centre: 80.012, shape: 'normal', half: 0.002 },
      { coefficient: -1, centre: 55.95, shape: 'rectangular', half: 0.05 },
      { coefficient: -2, centre: 12, shape: 'triangular', half: 0.03 },
    ];
    const exact = closingDistribution(links);
    const drawn = monteCarlo(
      (values) => values[0]! - values[1]! - 2 * values[2]!,
      [
        { shape: 'normal', mean: 80.012, sd: 0.002 },
        { shape: 'rectangular', low: 55.9, high: 56 },
        { shape: 'triangular', low: 11.97, high: 12.03 },
      ],
      { draws: 200_000, seed: 7, coverage: 0.95 },
    );
    // 2e5 draws: u to 0.16 % of itself, a 95 % end to about 0.006 u (JCGM 101, 8.2): four times that.
    expect(Math.abs(drawn.value - exact.mean)).toBeLessThan(0.01 * exact.sd);
    expect(drawn.u / exact.sd).toBeCloseTo(1, 2);
    expect(Math.abs(drawn.symmetric.low - exact.quantile(0.025))).toBeLessThan(0.025 * exact.sd);
    expect(Math.abs(drawn.symmetric.high - exact.quantile(0.975))).toBeLessThan(0.025 * exact.sd);
  });

  const anyLinks = fc.array(
    fc.record({
      coefficient: fc.constantFrom(1, -1, 2),
      centre: fc.double({ min: -10, max: 10, noNaN: true }),
      shape: fc.constantFrom('rectangular' as const, 'triangular' as const, 'normal' as const),
      half: fc.double({ min: 0.01, max: 0.5, noNaN: true }),
    }),
    { minLength: 1, maxLength: 5 },
  );

  it(
    'rises from 0 to 1, is even about its mean, and quantile undoes cdf',
    { timeout: 60_000 },
    () => {
      fc.assert(
        fc.property(anyLinks, fc.double({ min: 0.001, max: 0.999, noNaN: true }), (links, p) => {
          const { cdf, quantile, mean, sd, sharePercent } = closingDistribution(links);
          const x = quantile(p);
          expect(Math.abs(cdf(x) - p)).toBeLessThan(1e-8);
          expect(cdf(x + 0.1 * sd)).toBeGreaterThanOrEqual(cdf(x) - 1e-9);
          expect(Math.abs(cdf(2 * mean - x) - (1 - p))).toBeLessThan(1e-8);
          expect(sharePercent.reduce((sum, one) => sum + one, 0)).toBeCloseTo(100, 8);
          expect([cdf(-Infinity), cdf(Infinity)]).toEqual([0, 1]);
        }),
        { numRuns: 60 },
      );
    },
  );

  it('has the standard deviation of its own distribution function', () => {
    fc.assert(
      fc.property(anyLinks, (links) => {
        const { cdf, mean, sd } = closingDistribution(links);
        // Variance = 2 x integral of y (1 - F + F(-y)) from 0, midpoint rule to 12 sd.
        let variance = 0;
        const step = sd / 50;
        for (let y = step / 2; y < 12 * sd; y += step) {
          variance += 2 * y * (1 - cdf(mean + y) + cdf(mean - y)) * step;
        }
        expect(Math.sqrt(variance) / sd).toBeCloseTo(1, 3);
      }),
      { numRuns: 10 },
    );
  });

  it.each([
    ['closing-distribution/no-link', []],
    ['closing-distribution/link', [link('normal', 0)]],
    ['closing-distribution/link', [link('normal', 1, 0)]],
    ['closing-distribution/link', [link('normal', Infinity)]],
  ])('refuses by %s', (code, links) => {
    expect(() => closingDistribution(links)).toThrow(expect.objectContaining({ code }));
  });

  it('refuses chances of nothing and everything, and a place that is no number', () => {
    const found = closingDistribution([link('normal', 1)]);
    for (const p of [0, 1, NaN]) {
      expect(() => found.quantile(p)).toThrow(
        expect.objectContaining({ code: 'closing-distribution/chance' }),
      );
    }
    expect(() => found.cdf(NaN)).toThrow(
      expect.objectContaining({ code: 'closing-distribution/value' }),
    );
  });
});
