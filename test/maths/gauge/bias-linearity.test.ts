import { describe, expect, it } from 'vitest';
import { lineBand } from '@/lib/maths/control/line-band';
import { calibrationLine } from '@/lib/maths/gauge/calibration-line';
import { gaugeBias } from '@/lib/maths/gauge/gauge-bias';
import { gaugeLinearity, type LinearityInput } from '@/lib/maths/gauge/gauge-linearity';
import { expectEachNear, expectNear } from '../control/near';

// AIAG Measurement Systems Analysis manual, linearity example: five reference parts, twelve readings
// each (from memory; slope, intercept and R-squared are the published ones).
const manual: LinearityInput = {
  references: [2, 4, 6, 8, 10],
  readings: [
    [2.7, 2.5, 2.4, 2.5, 2.7, 2.3, 2.5, 2.5, 2.4, 2.4, 2.6, 2.4],
    [5.1, 3.9, 4.2, 5, 3.8, 3.9, 3.9, 3.9, 3.9, 4, 4.1, 3.8],
    [5.8, 5.7, 5.9, 5.9, 6, 6.1, 6, 6.1, 6.4, 6.3, 6, 6.1],
    [7.6, 7.7, 7.8, 7.7, 7.8, 7.8, 7.8, 7.7, 7.8, 7.5, 7.6, 7.7],
    [9.1, 9.3, 9.5, 9.3, 9.4, 9.5, 9.5, 9.5, 9.6, 9.2, 9.3, 9.4],
  ],
  confidence: 0.95,
};

describe('gaugeLinearity', () => {
  it('gives the published line of bias on size', () => {
    const found = gaugeLinearity(manual);
    expectNear(found.line.slope, -0.131667, 6e-7);
    expectNear(found.line.intercept, 0.736667, 6e-7);
    expectNear(100 * found.rSquared!, 71.4, 0.05);
    expectEachNear(found.meanBias, [0.491667, 0.125, 0.025, -0.29167, -0.616667], 6e-6);
  });

  it('tests slope and intercept with n - 2 degrees of freedom', () => {
    // AIAG MSA manual: t -12.043 and 10.158, t table 2.00172 for 58 (from memory).
    const found = gaugeLinearity(manual);
    expect(found.line.degreesOfFreedom).toBe(58);
    expectNear(found.tSlope, -12.043, 0.0006);
    expectNear(found.tIntercept, 10.158, 0.0006);
    expectNear(found.tCritical, 2.00172, 5e-6);
    expect(found.pSlope).toBeLessThan(1e-15);
    expect(found.pIntercept).toBeLessThan(1e-12);
  });

  it('has a chance of two tails', () => {
    // A bias with no lean whatever: slope 0, so the chance is 1.
    const level = {
      references: [1, 2],
      readings: [
        [1, 1.2],
        [2, 2.2],
      ],
      confidence: 0.95,
    };
    const found = gaugeLinearity(level);
    expectNear(found.tSlope, 0, 1e-12);
    expectNear(found.pSlope, 1, 1e-12);
    // t = 0.7071 for the intercept with 2 degrees: two-tailed chance 1 - t / sqrt(2 + t^2).
    expectNear(
      found.pIntercept,
      1 - found.tIntercept! / Math.sqrt(2 + found.tIntercept! ** 2),
      1e-9,
    );
  });

  it('lets references have different numbers of readings', () => {
    const uneven = { references: [1, 2, 3], readings: [[1.5], [2.5, 2.5], [3.5]], confidence: 0.9 };
    const found = gaugeLinearity(uneven);
    expectNear(found.line.intercept, 0.5, 1e-12);
    expect(found).not.toHaveProperty('tSlope');
    expect(found).not.toHaveProperty('rSquared');
  });

  it.each<[string, Partial<LinearityInput>, string]>([
    [
      'a reference without readings',
      { references: [1, 2] },
      'readings for each reference, got 2 and 5',
    ],
    [
      'an empty list of readings',
      { references: [1, 2], readings: [[1], []] },
      'at least 1 readings of reference 1, got 0',
    ],
    [
      'NaN',
      { references: [1, 2], readings: [[1], [NaN]] },
      'finite readings of reference 1, got NaN at index 0',
    ],
    [
      'a reference that is no number',
      { references: [1, 2, 3, 4, NaN] },
      'finite references, got NaN',
    ],
    ['a confidence of 95', { confidence: 95 }, 'a confidence between 0 and 1, got 95'],
    [
      'one size only',
      { references: [1], readings: [[1, 2, 3]] },
      'leastSquaresLine requires two or more different x',
    ],
  ])('refuses %s', (_, broken, message) => {
    expect(() => gaugeLinearity({ ...manual, ...broken })).toThrow(message);
  });
});

describe('gaugeBias', () => {
  it('is the mean reading less the reference, tested with n - 1', () => {
    // By hand: off by 1 2 3 um: mean 2, s 1, se 0.57735, t 3.4641; t(0.975, 2) = 4.3027 in any table;
    // two-tailed chance of t with 2 degrees 1 - t / sqrt(2 + t^2) = 0.07418.
    const found = gaugeBias([10.001, 10.002, 10.003], 10, 0.95);
    expectNear(found.bias, 0.002, 1e-12);
    expectNear(found.sd, 0.001, 1e-12);
    expectNear(found.se, 0.001 / Math.sqrt(3), 1e-12);
    expectNear(found.t, 3.4641016, 1e-6);
    expectNear(found.p, 0.0741799, 1e-6);
    expectNear(found.interval.low, 0.002 - 4.302653 * (0.001 / Math.sqrt(3)), 1e-9);
    expectNear(found.interval.high, 0.002 + 4.302653 * (0.001 / Math.sqrt(3)), 1e-9);
    expect([found.count, found.degreesOfFreedom]).toEqual([3, 2]);
  });

  it('keeps the chance of two tails for a bias below zero', () => {
    expectNear(gaugeBias([9.999, 9.998, 9.997], 10, 0.95).p, 0.0741799, 1e-6);
  });

  it('tests nothing when every reading is the same', () => {
    const found = gaugeBias([10.001, 10.001, 10.001], 10, 0.95);
    expect(found.se).toBe(0);
    expect(found).not.toHaveProperty('t');
    expectNear(found.interval.low, 0.001, 1e-12);
  });

  it.each([
    [[1], 1, 0.95, 'at least 2 readings, got 1'],
    [[1, NaN], 1, 0.95, 'finite readings, got NaN at index 1'],
    [[1, 2], NaN, 0.95, 'finite reference, got NaN'],
    [[1, 2], 1, 0, 'a confidence between 0 and 1, got 0'],
  ])('refuses %o against %s at %s', (readings, reference, confidence, message) => {
    expect(() => gaugeBias(readings, reference, confidence)).toThrow(message);
  });
});

describe('calibrationLine', () => {
  // JCGM 100:2008 Annex H.3, Table H.6: thermometer readings and observed corrections.
  const t = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.01, 26.511];
  const b = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.16];
  const line = calibrationLine(t, b, 20);

  it('gives the printed line of the thermometer with its uncertainties', () => {
    // H.3.3: y1 -0.1712, s 0.0029; y2 0.00218, s 0.00067; r -0.930; s 0.0035.
    expectNear(line.atReference, -0.1712, 5e-5);
    expectNear(line.uAtReference, 0.0029, 5e-5);
    expectNear(line.slope, 0.00218, 5e-6);
    expectNear(line.uSlope, 0.00067, 5e-6);
    expectNear(line.correlation, -0.93, 0.0005);
    expectNear(line.scatter, 0.0035, 5e-5);
  });

  it('predicts a correction away from the readings with the printed doubt', () => {
    // H.3.4: b(30) = -0.1494, u = 0.0041; H.3.5: least doubt at 24.0085.
    const { correction, u } = line.correctionAt(30);
    expectNear(correction, -0.1494, 5e-5);
    expectNear(u, 0.0041, 5e-5);
    expectNear(line.bestKnownAt, 24.0085, 5e-5);
  });

  it('has the doubt that the two coefficients and their correlation make', () => {
    // u^2 = u1^2 + (t - t0)^2 u2^2 + 2 (t - t0) u1 u2 r, H.3.4.
    for (const at of [15, 20, 24, 27, 40]) {
      const away = at - 20;
      const { uAtReference: u1, uSlope: u2, correlation: r } = line;
      const wanted = Math.sqrt(u1 ** 2 + away ** 2 * u2 ** 2 + 2 * away * u1 * u2 * r);
      expectNear(line.correctionAt(at).u, wanted, 1e-12);
    }
  });

  it('is uncorrelated about the middle, and turns sign beyond it', () => {
    expectNear(calibrationLine(t, b, line.bestKnownAt).correlation, 0, 1e-12);
    expect(calibrationLine(t, b, 30).correlation).toBeGreaterThan(0);
  });

  it('is the mean-line band without its t factor', () => {
    const band = lineBand(line.line, 22, 0.95).meanLine;
    // t(0.975, 9) = 2.262157 in any table.
    expectNear((band.high - band.low) / 2 / line.correctionAt(22).u, 2.262157, 1e-6);
  });

  it('refuses a reference that is no number', () => {
    expect(() => calibrationLine(t, b, NaN)).toThrow('a finite reference point, got NaN');
  });
});
