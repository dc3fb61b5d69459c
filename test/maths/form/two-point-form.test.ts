import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { twoPointForm, type TwoPointGrid } from '@/lib/maths/form/two-point-form';

// Worked by hand from the definitions of ISO 14405-1 two-point sizes.
const bore: TwoPointGrid = {
  side: 'internal',
  diametersMm: [
    [20.01, 20.002],
    [20.006, 20.001],
    [20.004, 20.0],
  ],
  positionsMm: [5, 25, 45],
};

// Doubles near 20 are 3.6e-15 apart, so sums of a few are good to about 1e-13 mm.
const toleranceMm = 1e-12;
const near = (got: number | undefined, wanted: number) =>
  expect(Math.abs(got! - wanted)).toBeLessThanOrEqual(toleranceMm);

const um = fc.integer({ min: -50, max: 50 });
const fullGrids = fc
  .tuple(fc.integer({ min: 1, max: 5 }), fc.integer({ min: 1, max: 4 }))
  .chain(([S, D]) =>
    fc.array(fc.array(um, { minLength: D, maxLength: D }), { minLength: S, maxLength: S }),
  )
  .map((rows) => rows.map((row) => row.map((value) => 30 + value / 1000)));

describe('twoPointForm', () => {
  it('gives ovality as the largest less the smallest diameter at each station', () => {
    const { ovality } = twoPointForm(bore);
    [0.008, 0.005, 0.004].forEach((wanted, s) => near(ovality[s]!.amountMm, wanted));
    expect(ovality.map((one) => one.widestDirection)).toEqual([0, 0, 0]);
  });

  it('gives taper as the first station less the last, so a wide mouth is above zero', () => {
    const form = twoPointForm(bore);
    near(form.taper[0]!.amountMm, 0.006);
    near(form.taper[1]!.amountMm, 0.002);
    near(form.taperOfMeansMm, 0.004);
  });

  it('calls a wide middle a barrel by a figure above zero', () => {
    const shaft = { side: 'external', diametersMm: [[10.0], [10.006], [10.002]] } as const;
    near(twoPointForm(shaft).middleMinusEndsMm, 0.005);
    expect(twoPointForm(shaft).bow!.station).toBe(1);
  });

  it('finds the tight spot that a taper from end to end misses', () => {
    const rows = [[30.01], [30.01], [30.01], [30.0], [30.01]];
    const { bow, taperOfMeansMm } = twoPointForm({ side: 'internal', diametersMm: rows });
    near(taperOfMeansMm, 0);
    expect(bow!.station).toBe(3);
    near(bow!.amountMm, -0.01);
  });

  it('measures the bow from the straight line between the ends where positions are uneven', () => {
    const cone = { side: 'internal', positionsMm: [0, 10, 100] } as const;
    const form = twoPointForm({ ...cone, diametersMm: [[20.0], [20.001], [20.01]] });
    near(form.bow!.amountMm, 0);
  });

  it('takes the slope by least squares and the half angle as half of it', () => {
    const form = twoPointForm(bore);
    near(form.slopeMmPerMm, -0.004 / 40);
    // atan(-0.00005) in minutes of arc: 0.00005 * 3437.746771 = 0.171887338 (small angle, 1e-13).
    expect(form.halfAngleArcmin).toBeCloseTo(-0.171887338, 8);
  });

  it('weighs the slope by position, not by the order of the stations', () => {
    const uneven = { side: 'internal', positionsMm: [0, 10, 40] } as const;
    const form = twoPointForm({ ...uneven, diametersMm: [[20.0], [20.002], [20.002]] });
    // By hand: mean position 50/3, Sxx = 866.667, Sxy = 0.0333333, slope 1/26000.
    near(form.slopeMmPerMm, 1 / 26000);
  });

  it('counts a bore by its smallest size and a shaft by its largest', () => {
    expect(twoPointForm(bore).governingMm).toBe(20.0);
    expect(twoPointForm({ ...bore, side: 'external' }).governingMm).toBe(20.01);
  });

  it('says nothing of form from a single reading', () => {
    const form = twoPointForm({ side: 'internal', diametersMm: [[9.998]] });
    expect(form).toEqual({
      minMm: 9.998,
      maxMm: 9.998,
      meanMm: 9.998,
      governingMm: 9.998,
      stationMeans: [{ station: 0, meanMm: 9.998 }],
      ovality: [],
      taper: [],
    });
  });

  it('names no widest direction where the directions agree', () => {
    const form = twoPointForm({ side: 'external', diametersMm: [[12, 12]] });
    expect(form.ovality).toEqual([{ station: 0, amountMm: 0 }]);
  });

  it('never shows ovality as taper while the grid is half filled', () => {
    const rows = [
      [20.01, 20.0],
      [null, null],
      [20.01, null],
    ];
    const form = twoPointForm({ side: 'internal', diametersMm: rows, positionsMm: [0, 1, 2] });
    near(form.taperOfMeansMm, 0);
    near(form.slopeMmPerMm, 0);
    expect(form.taper).toHaveLength(1);
    expect(form.bow).toBeUndefined();
    expect(form.stationMeans.map((one) => one.station)).toEqual([0, 2]);
  });

  it('leaves slope and bow out where no direction runs through', () => {
    const rows = [
      [20.01, null],
      [20.0, 20.0],
      [null, 20.01],
    ];
    const form = twoPointForm({ side: 'internal', diametersMm: rows, positionsMm: [0, 1, 2] });
    expect(form.slopeMmPerMm).toBeUndefined();
    expect(form.middleMinusEndsMm).toBeUndefined();
    expect(form.taperOfMeansMm).toBeUndefined();
  });

  it('keeps every reading between the smallest and the largest, however the grid is turned', () => {
    fc.assert(
      fc.property(fullGrids, (rows) => {
        const form = twoPointForm({ side: 'internal', diametersMm: rows });
        const turned = twoPointForm({ side: 'internal', diametersMm: rows.toReversed() });
        expect(form.governingMm).toBe(Math.min(...rows.flat()));
        expect(turned.minMm).toBe(form.minMm);
        expect(turned.maxMm).toBe(form.maxMm);
        if (form.taperOfMeansMm !== undefined) near(turned.taperOfMeansMm, -form.taperOfMeansMm);
        if (form.middleMinusEndsMm !== undefined) {
          near(turned.middleMinusEndsMm, form.middleMinusEndsMm);
        }
      }),
    );
  });

  it('agrees on a full grid with the difference of the station means', () => {
    fc.assert(
      fc.property(fullGrids, (rows) => {
        const form = twoPointForm({ side: 'external', diametersMm: rows });
        if (rows.length < 2) return;
        const wanted = form.stationMeans[0]!.meanMm - form.stationMeans.at(-1)!.meanMm;
        near(form.taperOfMeansMm, wanted);
      }),
    );
  });

  it.each([
    ['two-point-form/shape', { diametersMm: [] }],
    ['two-point-form/shape', { diametersMm: [[1], [1, 2]] }],
    ['two-point-form/diameter', { diametersMm: [[0]] }],
    ['two-point-form/diameter', { diametersMm: [[NaN]] }],
    ['two-point-form/nothing-read', { diametersMm: [[null]] }],
    ['two-point-form/positions', { diametersMm: [[1], [1]], positionsMm: [1] }],
    ['two-point-form/positions', { diametersMm: [[1], [1]], positionsMm: [2, 2] }],
  ])('refuses by %s', (code, grid) => {
    expect(() => twoPointForm({ side: 'internal', ...grid })).toThrow(
      expect.objectContaining({ code }),
    );
  });
});
