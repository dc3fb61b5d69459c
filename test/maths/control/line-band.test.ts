import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { leastSquaresLine } from '@/lib/maths/control/least-squares-line';
import { leverage } from '@/lib/maths/control/leverage';
import { lineAt } from '@/lib/maths/control/line-at';
import { lineBand } from '@/lib/maths/control/line-band';
import { slopeInterval } from '@/lib/maths/control/slope-interval';
import { expectNear } from './near';
import { oxygen } from './oxygen';

const line = leastSquaresLine(oxygen.x, oxygen.y);

describe('lineBand', () => {
  it('gives the published prediction interval of oxygen purity', () => {
    // Montgomery and Runger, Examples 11-5 and 11-6, at 1.00: printed to two decimals, worked there
    // with the sum of squares rounded to four figures.
    const { newReading, line: fit } = lineBand(line, 1, 0.95);
    expectNear(fit, 89.23, 0.005);
    expectNear(newReading.low, 86.83, 0.01);
    expectNear(newReading.high, 91.63, 0.01);
  });

  it('is the line plus and minus t s sqrt(h) and t s sqrt(1 + h)', () => {
    // t(0.975, 18) = 2.100922, any printed t table (Montgomery and Runger, Table IV: 2.101).
    const h = 1 / 20 + (1.5 - line.meanX) ** 2 / line.sumSquaresX;
    const band = lineBand(line, 1.5, 0.95);
    expectNear(band.meanLine.high - band.line, 2.10092204 * line.residualSd * Math.sqrt(h), 1e-7);
    expectNear(
      band.line - band.newReading.low,
      2.10092204 * line.residualSd * Math.sqrt(1 + h),
      1e-7,
    );
  });

  it('is narrowest in the middle of the readings and the same to either side', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 5, noNaN: true }), (away) => {
        const width = (x: number) => {
          const { low, high } = lineBand(line, x, 0.9).newReading;
          return high - low;
        };
        expectNear(width(line.meanX + away), width(line.meanX - away), 1e-11);
        expect(width(line.meanX + away)).toBeGreaterThan(width(line.meanX));
      }),
    );
  });

  it.each([0, 1, -0.5, NaN])('refuses a confidence of %s', (confidence) => {
    expect(() => lineBand(line, 1, confidence)).toThrow(`got ${confidence}`);
  });

  it('refuses a place that is not finite', () => {
    expect(() => lineBand(line, NaN, 0.95)).toThrow('lineAt requires a finite x, got NaN');
  });
});

describe('leverage', () => {
  it('is 1/n in the middle and adds up to two over the readings', () => {
    // The trace of the hat matrix of a straight line is its two parameters (Draper and Smith).
    expectNear(leverage(line, line.meanX), 1 / 20, 1e-15);
    expectNear(
      oxygen.x.reduce((sum, x) => sum + leverage(line, x), 0),
      2,
      1e-12,
    );
  });
});

describe('lineAt', () => {
  it('passes through the middle of the readings and the intercept', () => {
    expectNear(lineAt(line, line.meanX), 92.1605, 1e-9); // 1843.21 / 20, the published sum
    expectNear(lineAt(line, 0), line.intercept, 1e-12);
  });
});

describe('slopeInterval', () => {
  it('is the slope plus and minus t of its standard error', () => {
    // From the reference set drift.json, case dr-oxygen, ten digits.
    const { low, high } = slopeInterval(line, 0.95);
    expectNear(low, 12.18107326, 1e-6);
    expectNear(high, 17.7138862, 1e-6);
  });

  it('grows with the confidence', () => {
    const narrow = slopeInterval(line, 0.8);
    const wide = slopeInterval(line, 0.99);
    expect(wide.low).toBeLessThan(narrow.low);
    expect(wide.high).toBeGreaterThan(narrow.high);
  });

  it('refuses a confidence of 1', () => {
    expect(() => slopeInterval(line, 1)).toThrow('a confidence between 0 and 1, got 1');
  });
});
