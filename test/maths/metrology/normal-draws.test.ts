import { describe, expect, it } from 'vitest';
import { chiSquareQuantile } from '@/lib/maths/distributions/chi-square-quantile';
import { normalCdf } from '@/lib/maths/distributions/normal-cdf';
import { normalDraws } from '@/lib/maths/metrology/normal-draws';
import { seededRandom } from '@/lib/maths/metrology/seeded-random';
import { zigguratLayers } from '@/lib/maths/metrology/ziggurat-layers';
import { expectNear } from '../near';

const { widths, heights } = zigguratLayers();
const curve = (x: number) => Math.exp(-0.5 * x * x);
const r = widths[1]!;
const sqrtTwoPi = Math.sqrt(2 * Math.PI);

describe('zigguratLayers', () => {
  it('close at the top for this r and no other, that of the paper to 11 decimals', () => {
    // The equation that defines r: every layer, the base with the tail under the curve in it, has the
    // same area, and the last ends at height 1. Solved anew by halving.
    const past = (width: number) => {
      const area = width * curve(width) + sqrtTwoPi * normalCdf(-width);
      let x = width;
      for (let i = 1; i < 127; i += 1) {
        const height = area / x + curve(x);
        if (height >= 1) return 1;
        x = Math.sqrt(-2 * Math.log(height));
      }
      return area / x + curve(x) - 1;
    };
    let [low, high] = [3, 4];
    while (high - low > 1e-14) {
      const middle = (low + high) / 2;
      if (past(middle) > 0) low = middle;
      else high = middle;
    }
    expectNear(r, low, { abs: 2e-14 });
    // Marsaglia and Tsang 2000 print 3.442619855899 and an area of 9.91256303526217e-3.
    expectNear(r, 3.442619855899, { abs: 5e-12 });
    expectNear(widths[0]! * heights[1]!, 9.91256303526217e-3, { abs: 1e-13 });
  });

  it('all have the same area', () => {
    const base = r * curve(r) + sqrtTwoPi * normalCdf(-r);
    for (let i = 0; i < 127; i += 1) {
      expectNear(widths[i]! * (heights[i + 1]! - heights[i]!), base, { rel: 1e-13 });
    }
    // The last takes up what is rounded in all others.
    expectNear(widths[127]! * (1 - heights[127]!), base, { rel: 1e-10 });
    expect([widths[128], heights[0], heights[128]]).toEqual([0, 0, 1]);
  });

  it('narrow from layer to layer, their outer edges on the curve', () => {
    for (let i = 1; i < 128; i += 1) {
      expect(widths[i + 1]!).toBeLessThan(widths[i]!);
      expectNear(heights[i]!, curve(widths[i]!), { rel: 1e-15 });
    }
  });
});

describe('normalDraws', () => {
  it('pass the chi-square test of 200 steps from -7 to 7', () => {
    // The check of Leong, Zhang, Lee, Luk and Villasenor, A Comment on the Implementation of the
    // Ziggurat Method, Journal of Statistical Software 12 (7) (2005); steps with fewer than ten
    // draws expected are put together. A right sampler fails at 0.9999 once in 10000 seeds.
    const draws = 4_000_000;
    const normal = normalDraws(seededRandom(2));
    const counts = new Float64Array(200);
    let outside = 0;
    for (let i = 0; i < draws; i += 1) {
      const step = Math.floor((normal() + 7) / 0.07);
      if (step < 0 || step >= 200) outside += 1;
      else counts[step]! += 1;
    }
    expect(outside).toBe(0);
    let [chiSquare, cells, count, wanted] = [0, 0, 0, 0];
    for (let step = 0; step < 200; step += 1) {
      const from = -7 + 0.07 * step;
      count += counts[step]!;
      wanted += draws * (normalCdf(from + 0.07) - normalCdf(from));
      if (wanted < 10 && step < 199) continue;
      chiSquare += (count - wanted) ** 2 / Math.max(wanted, 1);
      cells += 1;
      [count, wanted] = [0, 0];
    }
    expect(cells).toBeGreaterThan(120);
    expect(chiSquare).toBeLessThan(chiSquareQuantile(0.9999, cells - 1));
    expect(chiSquare).toBeGreaterThan(chiSquareQuantile(0.0001, cells - 1));
  });

  it('have the tail beyond the base, on both sides, and its length', () => {
    const draws = 4_000_000;
    const normal = normalDraws(seededRandom(5));
    let [above, below, sum] = [0, 0, 0];
    for (let i = 0; i < draws; i += 1) {
      const x = normal();
      if (Math.abs(x) <= r) continue;
      if (x > 0) above += 1;
      else below += 1;
      sum += Math.abs(x) - r;
    }
    // Expected 1152 a side, a Poisson count: five of its standard deviations.
    const wanted = draws * normalCdf(-r);
    expectNear(above, wanted, { abs: 5 * Math.sqrt(wanted) });
    expectNear(below, wanted, { abs: 5 * Math.sqrt(wanted) });
    // Mean beyond r of a normal tail: density/tail - r, 0.27 with about the same spread.
    const beyond = curve(r) / sqrtTwoPi / normalCdf(-r) - r;
    expectNear(sum / (above + below), beyond, { abs: (5 * beyond) / Math.sqrt(above + below) });
  });

  it('go without memory: neither a draw nor its size tells of the next', () => {
    const draws = 1_000_000;
    const normal = normalDraws(seededRandom(8));
    let [products, sizes, before] = [0, 0, normal()];
    for (let i = 0; i < draws; i += 1) {
      const x = normal();
      products += x * before;
      sizes += (x * x - 1) * (before * before - 1);
      before = x;
    }
    // Means of products of independent variables with variances 1 and 2: 0 with 0.001 and 0.002.
    expectNear(products / draws, 0, { abs: 0.005 });
    expectNear(sizes / draws, 0, { abs: 0.01 });
  });

  it('take one number of the sequence where the curve is not near', () => {
    // 0.3 x 128 = 38.4: layer 38, place 0.4 from the left edge to the right.
    const draw = normalDraws(() => 0.3)();
    expectNear(draw, -0.2 * widths[38]!, { rel: 1e-12 });
    const mirrored = normalDraws(() => (38 + 0.6) / 128)();
    expectNear(mirrored, 0.2 * widths[38]!, { rel: 1e-12 });
    // How seldom it is near: the part of each layer that reaches past the one above.
    let certain = 0;
    for (let i = 0; i < 128; i += 1) certain += widths[i + 1]! / widths[i]! / 128;
    expectNear(certain, 0.9724, { abs: 0.00005 });
  });
});
