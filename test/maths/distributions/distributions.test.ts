import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chiSquareCdf } from '@/lib/maths/distributions/chi-square-cdf';
import { chiSquarePdf } from '@/lib/maths/distributions/chi-square-pdf';
import { chiSquareQuantile } from '@/lib/maths/distributions/chi-square-quantile';
import { chiSquareUpperTail } from '@/lib/maths/distributions/chi-square-upper-tail';
import { fCdf } from '@/lib/maths/distributions/f-cdf';
import { fPdf } from '@/lib/maths/distributions/f-pdf';
import { fQuantile } from '@/lib/maths/distributions/f-quantile';
import { fUpperTail } from '@/lib/maths/distributions/f-upper-tail';
import { integral } from '@/lib/maths/distributions/integral';
import { noncentralTCdf } from '@/lib/maths/distributions/noncentral-t-cdf';
import { noncentralTPdf } from '@/lib/maths/distributions/noncentral-t-pdf';
import { noncentralTQuantile } from '@/lib/maths/distributions/noncentral-t-quantile';
import { normalCdf } from '@/lib/maths/distributions/normal-cdf';
import { normalPdf } from '@/lib/maths/distributions/normal-pdf';
import { normalQuantile } from '@/lib/maths/distributions/normal-quantile';
import { studentTCdf } from '@/lib/maths/distributions/student-t-cdf';
import { studentTPdf } from '@/lib/maths/distributions/student-t-pdf';
import { studentTQuantile } from '@/lib/maths/distributions/student-t-quantile';
import { studentTUpperTail } from '@/lib/maths/distributions/student-t-upper-tail';
import { weibullQuantile } from '@/lib/maths/distributions/weibull-quantile';
import { expectNear } from '../near';

const chances = fc.double({ min: 1e-9, max: 1 - 1e-9, noNaN: true });
const degreesOf = fc.double({ min: 0.6, max: 5000, noNaN: true });

// Figures without another source: mpmath 1.3 at 40 digits.
describe('the normal distribution', () => {
  it('holds 68.27, 95.45 and 99.73 % within one, two and three sigma', () => {
    // JCGM 100:2008 table G.2, note: printed to four figures, so half a unit of the last.
    [68.27, 95.45, 99.73].forEach((percent, i) => {
      expectNear(100 * (1 - 2 * normalCdf(-(i + 1))), percent, { abs: 0.005 });
    });
  });

  it('keeps the relative precision of a far tail', () => {
    expectNear(normalCdf(-10), 7.619853024160525e-24, { rel: 1e-14 });
    expect(normalCdf(-Infinity)).toBe(0);
    expect(normalCdf(Infinity)).toBe(1);
  });

  it('has the density that its probabilities add up to', () => {
    expectNear(integral(normalPdf, -1, 2), normalCdf(2) - normalCdf(-1), { rel: 1e-14 });
  });

  it('gives a probability back from its quantile', () => {
    fc.assert(
      fc.property(chances, (p) => {
        const z = normalQuantile(p);
        expectNear(z < 0 ? normalCdf(z) : normalCdf(-z), Math.min(p, 1 - p), { rel: 1e-13 });
      }),
    );
  });

  it('is odd about one half', () => {
    expect(normalQuantile(0.25)).toBe(-normalQuantile(0.75));
    expect(normalQuantile(0.5)).toBe(0);
    expectNear(normalQuantile(1e-300), -37.0470962993612, { abs: 1e-9 });
  });

  it.each([0, 1, -0.1, NaN])('refuses the chance %s', (p) => {
    expect(() => normalQuantile(p)).toThrow(`got ${p}`);
  });

  it('refuses a place that is no number', () => {
    expect(() => normalCdf(NaN)).toThrow('got NaN');
    expect(() => normalPdf(NaN)).toThrow('got NaN');
    expect(normalPdf(-Infinity)).toBe(0);
  });
});

describe("Student's t", () => {
  it.each([
    [2, 5, 0.05096973941492918],
    [12, 5, 3.544746258580761e-5],
    [1, 0.5, 0.3011216108413221],
    [40, 9, 9.491499224669913e-12],
    [0.001, 30, 0.49960436788324253],
  ])('leaves beyond %s with %s degrees of freedom what it should', (t, nu, wanted) => {
    expectNear(studentTUpperTail(t, nu), wanted, { rel: 1e-13 });
    expectNear(studentTCdf(-t, nu), wanted, { rel: 1e-13 });
    expectNear(studentTCdf(t, nu), 1 - wanted, { rel: 1e-15 });
  });

  it('is the Cauchy distribution with one degree of freedom', () => {
    // F(t) = 1/2 + atan(t)/pi: any text on the Cauchy distribution.
    for (const t of [-7, -0.2, 0, 3]) {
      expectNear(studentTCdf(t, 1), 0.5 + Math.atan(t) / Math.PI, { rel: 1e-14 });
    }
    expectNear(studentTPdf(0, 1), 1 / Math.PI, { rel: 1e-15 });
  });

  it.each([
    [2, 5, 0.06509031032621647],
    [3, 8.56, 0.01249257765216875],
  ])('has the density at %s with %s degrees of freedom', (t, nu, wanted) => {
    expectNear(studentTPdf(t, nu), wanted, { rel: 1e-14 });
  });

  it('becomes the normal distribution without end', () => {
    expect(studentTUpperTail(1.5, Infinity)).toBe(normalCdf(-1.5));
    expect(studentTPdf(1.5, Infinity)).toBe(normalPdf(1.5));
    expect(studentTQuantile(0.9, Infinity)).toBe(normalQuantile(0.9));
    // The first correction is (z^3 + z)/(4 nu), by hand 2.372e-6 at a million; the next is 1e-12.
    expectNear(studentTQuantile(0.975, 1e6) - normalQuantile(0.975), 2.372e-6, { abs: 1e-9 });
  });

  it('ends at nothing and at one', () => {
    expect(studentTUpperTail(Infinity, 3)).toBe(0);
    expect(studentTUpperTail(-Infinity, 3)).toBe(1);
    expect(studentTPdf(Infinity, 3)).toBe(0);
  });

  it('gives a probability back from its quantile, whole degrees or not', () => {
    fc.assert(
      fc.property(chances, degreesOf, (p, nu) => {
        const t = studentTQuantile(p, nu);
        const tail = t < 0 ? studentTCdf(t, nu) : studentTUpperTail(t, nu);
        expectNear(tail, Math.min(p, 1 - p), { rel: 1e-12 });
      }),
    );
  });

  it('is exact near the middle, where the tail alone would lose digits', () => {
    // Close to zero the quantile is (p - 1/2)/density(0).
    expectNear(studentTQuantile(0.5 + 2 ** -40, 7), 2 ** -40 / studentTPdf(0, 7), { rel: 1e-12 });
    expect(studentTQuantile(0.5, 7)).toBe(0);
  });

  it('refuses no degrees of freedom', () => {
    expect(() => studentTQuantile(0.9, 0)).toThrow('got 0');
    expect(() => studentTUpperTail(1, -1)).toThrow('got -1');
    expect(() => studentTPdf(1, NaN)).toThrow('got NaN');
    expect(() => studentTQuantile(1, 5)).toThrow('got 1');
  });
});

describe('chi-square', () => {
  it.each([
    [10, 3, 0.018566135463043233],
    [200, 100, 1.1784500720979422e-8],
    [0.01, 1, 0.920344325445942],
    [500, 100, 1.7201210053695373e-54],
  ])('leaves beyond %s with %s degrees of freedom what it should', (x, nu, wanted) => {
    expectNear(chiSquareUpperTail(x, nu), wanted, { rel: 2e-13 });
  });

  it.each([
    [1, 10, 0.00017211562995584078],
    [30, 100, 9.056125543148137e-13],
  ])('has below %s with %s degrees of freedom what it should', (x, nu, wanted) => {
    expectNear(chiSquareCdf(x, nu), wanted, { rel: 2e-13 });
  });

  it('has the density that its probabilities add up to', () => {
    expectNear(chiSquarePdf(2, 2), 0.18393972058572117, { rel: 1e-15 });
    expectNear(chiSquarePdf(95, 100), 0.027788436837347438, { rel: 1e-14 });
    const between = chiSquareCdf(9, 3) - chiSquareCdf(1, 3);
    expectNear(
      integral((x) => chiSquarePdf(x, 3), 1, 9),
      between,
      { rel: 1e-13 },
    );
    expect(chiSquarePdf(-1, 3)).toBe(0);
  });

  it('gives a probability back from its quantile', () => {
    fc.assert(
      fc.property(chances, degreesOf, (p, nu) => {
        const x = chiSquareQuantile(p, nu);
        const tail = p <= 0.5 ? chiSquareCdf(x, nu) : chiSquareUpperTail(x, nu);
        expectNear(tail, Math.min(p, 1 - p), { rel: 1e-11 });
      }),
    );
  });

  it('refuses no or endless degrees of freedom', () => {
    expect(() => chiSquareQuantile(0.5, 0)).toThrow('got 0');
    expect(() => chiSquareCdf(1, Infinity)).toThrow('got Infinity');
    expect(() => chiSquareUpperTail(NaN, 2)).toThrow('got NaN');
    expect(() => chiSquarePdf(1, -2)).toThrow('got -2');
  });
});

describe('F', () => {
  it.each([
    [3, 2, 10, 0.095367431640625],
    [492.291422664, 9, 18, 1.163063994927589e-19],
    [0.5, 4, 20, 0.7360371889109243],
    [10, 1, 2.5, 0.0650168397868043],
  ])('leaves beyond %s with %s and %s degrees of freedom what it should', (x, a, b, wanted) => {
    expectNear(fUpperTail(x, a, b), wanted, { rel: 1e-13 });
    expectNear(fCdf(x, a, b), 1 - wanted, { rel: 1e-13 });
  });

  it('turned over is F with the degrees of freedom exchanged', () => {
    expectNear(fUpperTail(2.5, 7, 13), fCdf(1 / 2.5, 13, 7), { rel: 1e-13 });
    expectNear(fQuantile(0.05, 7, 13), 1 / fQuantile(0.95, 13, 7), { rel: 1e-12 });
  });

  it('is t squared with one degree of freedom above', () => {
    expectNear(fQuantile(0.95, 1, 9), studentTQuantile(0.975, 9) ** 2, { rel: 1e-12 });
  });

  it('has the density that its probabilities add up to', () => {
    expectNear(fPdf(3, 2, 10), 0.059604644775390625, { rel: 1e-14 });
    expectNear(fPdf(0.5, 4, 20), 0.700987798962785, { rel: 1e-14 });
    expect(fPdf(0, 2, 10)).toBe(0);
    expect([fCdf(0, 2, 3), fUpperTail(0, 2, 3), fCdf(Infinity, 2, 3)]).toEqual([0, 1, 1]);
  });

  it('gives a probability back from its quantile', () => {
    fc.assert(
      fc.property(chances, degreesOf, degreesOf, (p, a, b) => {
        const x = fQuantile(p, a, b);
        const tail = p <= 0.5 ? fCdf(x, a, b) : fUpperTail(x, a, b);
        expectNear(tail, Math.min(p, 1 - p), { rel: 1e-10 });
      }),
    );
  });

  it('refuses no degrees of freedom on either side', () => {
    expect(() => fQuantile(0.5, 0, 3)).toThrow('got 0');
    expect(() => fUpperTail(1, 2, 0)).toThrow('got 0');
    expect(() => fCdf(1, 2, NaN)).toThrow('got NaN');
    expect(() => fPdf(NaN, 2, 3)).toThrow('got NaN');
  });
});

describe('noncentral t', () => {
  // SciPy 1.17.1, stats.nct.cdf, pdf and ppf; its own accuracy is about 1e-12 here.
  it.each([
    [3, 2, 1.5, 0.7395698032036728],
    [-1, 3, 2, 0.0030052475953985074],
    [7.4, 9, 4.05, 0.9483806326398126],
    [20, 50, 15, 0.9876614107860453],
    [40, 500, 38, 0.8905434799268236],
    [100, 1, 3, 0.9760652002406627],
  ])('is below %s with %s degrees of freedom, shifted by %s', (t, nu, shift, wanted) => {
    expectNear(noncentralTCdf(t, nu, shift), wanted, { abs: 1e-12 });
  });

  it('has the density of its probabilities', () => {
    expectNear(noncentralTPdf(3, 2, 1.5), 0.12546732149836085, { rel: 1e-11 });
    expectNear(noncentralTPdf(20, 50, 15), 0.012215960725844618, { rel: 1e-11 });
  });

  it('is t when it is not shifted, and mirrored when the shift is', () => {
    expectNear(noncentralTCdf(1.3, 6, 0), studentTCdf(1.3, 6), { abs: 1e-13 });
    expectNear(noncentralTCdf(1.3, 6, -2), 1 - noncentralTCdf(-1.3, 6, 2), { abs: 1e-13 });
  });

  it('finds its quantile on either side of zero', () => {
    expectNear(noncentralTQuantile(0.3, 7, -2), -2.7516679544573304, { rel: 1e-10 });
    const shift = normalQuantile(0.9) * Math.sqrt(10);
    expectNear(noncentralTQuantile(0.95, 9, shift), 7.446025886618969, { rel: 1e-10 });
  });

  it('ends at nothing and at one', () => {
    expect(noncentralTCdf(Infinity, 3, 1)).toBe(1);
    expect(noncentralTCdf(-Infinity, 3, 1)).toBe(0);
    expect(noncentralTPdf(Infinity, 3, 1)).toBe(0);
  });

  it('refuses what it cannot stand on', () => {
    expect(() => noncentralTCdf(1, 0, 1)).toThrow('got 0');
    expect(() => noncentralTCdf(1, 3, Infinity)).toThrow('got Infinity');
    expect(() => noncentralTPdf(1, 3, NaN)).toThrow('got NaN');
    expect(() => noncentralTQuantile(0, 3, 1)).toThrow('got 0');
  });
});

describe('weibullQuantile', () => {
  it('is the exponential distribution with shape 1', () => {
    // Median ln 2 times the scale: definition.
    expectNear(weibullQuantile(0.5, { shape: 1, scale: 3 }), 3 * Math.LN2, { rel: 1e-15 });
  });

  it('takes the 63.2 % point at its scale whatever the shape', () => {
    expectNear(weibullQuantile(1 - Math.exp(-1), { shape: 2.7, scale: 5 }), 5, { rel: 1e-15 });
    expectNear(weibullQuantile(1e-12, { shape: 2, scale: 1 }), 1e-6, { rel: 1e-12 });
  });

  it('refuses parameters that are not above zero', () => {
    expect(() => weibullQuantile(0.5, { shape: 0, scale: 1 })).toThrow('got 0 and 1');
    expect(() => weibullQuantile(0.5, { shape: 1, scale: NaN })).toThrow('got 1 and NaN');
    expect(() => weibullQuantile(1, { shape: 1, scale: 1 })).toThrow('got 1');
  });
});
