import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Link } from '@/lib/maths/chain/check-chain';
import { linearChain } from '@/lib/maths/chain/linear-chain';

const link = (coefficient: number, nominal: number, half: number): Link => ({
  coefficient,
  nominal,
  upper: half,
  lower: -half,
});

const links = fc.array(
  fc
    .record({
      coefficient: fc.constantFrom(1, -1, 2, -0.5),
      nominal: fc.double({ min: -50, max: 50, noNaN: true }),
      lower: fc.double({ min: -0.2, max: 0.2, noNaN: true }),
      // Whole picometres: no tolerance is so small that its square is nothing.
      zonePm: fc.integer({ min: 0, max: 2e8 }),
    })
    .map(({ zonePm, lower, ...rest }): Link => ({ ...rest, lower, upper: lower + zonePm / 1e9 })),
  { minLength: 1, maxLength: 7 },
);

describe('linearChain', () => {
  it('agrees with the shouldered screw of Shigley', () => {
    // Shigley 9th ed., example 1-3: a 1.750 +- 0.003, b 0.750 +- 0.001, c 0.120 +- 0.005,
    // d 0.875 +- 0.001 in: gap 0.005 +- 0.010 in.
    const gap = linearChain([
      link(1, 1.75, 0.003),
      link(-1, 0.75, 0.001),
      link(-1, 0.12, 0.005),
      link(-1, 0.875, 0.001),
    ]);
    expect(gap.middle).toBeCloseTo(0.005, 12);
    expect(gap.worstHalf).toBeCloseTo(0.01, 12);
    expect(gap.worst.least).toBeCloseTo(-0.005, 12);
    expect(gap.worst.most).toBeCloseTo(0.015, 12);
    // sqrt(9 + 1 + 25 + 1) = 6, by hand; shares 9, 1, 25 and 1 of 36.
    expect(gap.rssHalf).toBeCloseTo(0.006, 12);
    expect(gap.rss.least).toBeCloseTo(-0.001, 12);
    expect(gap.rss.most).toBeCloseTo(0.011, 12);
    expect(gap.sharePercent[2]).toBeCloseTo((100 * 25) / 36, 9);
  });

  it('agrees with the examination question of GATE 2015', () => {
    // Mechanical, set 1, question 30: 22 +- 0.01 less 10 +- 0.005 twice is 2 +- 0.012.
    const found = linearChain([link(1, 22, 0.01), link(-1, 10, 0.005), link(-1, 10, 0.005)]);
    expect(found.middle).toBe(2);
    expect(found.rssHalf).toBeCloseTo(0.012, 3);
  });

  it('sets unequal deviations about the middle of their zone', () => {
    const found = linearChain([
      { coefficient: 1, nominal: 62, upper: 0.074, lower: 0 },
      { coefficient: -2, nominal: 12, upper: 0, lower: -0.043 },
    ]);
    // 62.037 - 2 x 11.9785 = 38.080, half 0.037 + 0.043.
    expect(found.nominal).toBe(38);
    expect(found.middle).toBeCloseTo(38.08, 12);
    expect(found.worstHalf).toBeCloseTo(0.08, 12);
  });

  it('counts two equal pieces apart, not as one with coefficient 2', () => {
    const apart = linearChain([link(-1, 12, 0.02), link(-1, 12, 0.02)]);
    const together = linearChain([link(-2, 12, 0.02)]);
    expect(apart.worstHalf).toBeCloseTo(together.worstHalf, 12);
    expect(apart.rssHalf / together.rssHalf).toBeCloseTo(Math.SQRT1_2, 12);
  });

  it('holds every chain within its worst case, and reaches its ends', () => {
    fc.assert(
      fc.property(
        links,
        fc.infiniteStream(fc.double({ min: 0, max: 1, noNaN: true })),
        (chain, stream) => {
          const parts = [...stream.take(chain.length)];
          const size = (at: (one: Link, i: number) => number) =>
            chain.reduce((sum, one, i) => sum + one.coefficient * (one.nominal + at(one, i)), 0);
          const some = size((one, i) => one.lower + parts[i]! * (one.upper - one.lower));
          const most = size((one) => (one.coefficient > 0 ? one.upper : one.lower));
          const found = linearChain(chain);
          expect(some).toBeLessThanOrEqual(found.worst.most + 1e-10);
          expect(some).toBeGreaterThanOrEqual(found.worst.least - 1e-10);
          expect(most).toBeCloseTo(found.worst.most, 9);
          expect(found.rssHalf).toBeLessThanOrEqual(found.worstHalf + 1e-12);
          const shares = found.sharePercent.reduce((sum, one) => sum + one, 0);
          expect(shares).toBeCloseTo(found.rssHalf === 0 ? 0 : 100, 6);
        },
      ),
    );
  });

  it.each([
    ['linear-chain/no-link', []],
    ['linear-chain/link', [link(0, 1, 1)]],
    ['linear-chain/link', [link(1, 1, -1)]],
    ['linear-chain/link', [link(1, NaN, 1)]],
  ])('refuses by %s', (code, chain) => {
    expect(() => linearChain(chain)).toThrow(expect.objectContaining({ code }));
  });
});
