import { describe, expect, it } from 'vitest';
import { jobView } from '@/lib/rules/job-view';
import { shapeEffect } from '@/lib/rules/shape-effect';
import { um } from './make';
import { smallJob, type SmallJob } from './small-job';

// Invented sizes, in micrometres from 18 mm, in the order top A, top B, middle A, middle B, bottom A, bottom B.
// The fit is 0.008 to 0.012, aim 0.010.
const six = (microns: number) => [microns, microns, microns, microns, microns, microns];

function effect(job: SmallJob, side: 'internal' | 'external' = 'internal') {
  const view = smallJob(job);
  const fit = view.fits[0]!;
  const piece = (side === 'internal' ? fit.internals : fit.externals)[0]!;
  const feature = side === 'internal' ? fit.internalFeature : fit.externalFeature;
  return shapeEffect(fit, side, piece, view.cell(piece.piece.id, feature.id), view.cells.gauges);
}
const extreme = { governs: 'extreme', maxPm: 100 * um } as const;

describe('shapeEffect', () => {
  it('says across which place the clearance will be widest, with the partner as measured', () => {
    const bores = [[10, 62, 10, 62, 10, 62]];
    const found = effect({ bores, shafts: [six(0)], fit: extreme })!;
    expect(found.governs).toEqual({ station: 'top', direction: 'A' });
    expect(found.shapes).toMatchObject([{ kind: 'oval', amountPm: 52 * um, widestDirection: 1 }]);
    expect(found).toMatchObject({ reckonedWith: 'partner', clearancePm: 10 * um, tightest: null });
    expect(found.widest).toEqual({ station: 'top', direction: 'B', clearancePm: 62 * um });
  });

  it('reckons with the aim while there is no partner', () => {
    const found = effect({ bores: [[10, 62, 10, 62, 10, 62]], fit: extreme })!;
    expect(found).toMatchObject({ reckonedWith: 'aim', partnerId: null, clearancePm: 10 * um });
    expect(found.widest!.clearancePm).toBe(62 * um);
  });

  it('takes from a shaft what is missing where it is small', () => {
    const shafts = [[0, 0, 0, 0, -30, -30]];
    const found = effect({ bores: [six(10)], shafts, fit: extreme }, 'external')!;
    expect(found.shapes[0]).toMatchObject({ kind: 'taper', amountPm: 30 * um, wideEnd: 'first' });
    expect(found.widest).toEqual({ station: 'skirt', direction: 'A', clearancePm: 40 * um });
    const bore = smallJob({ bores: [six(10)], shafts }).fits[0]!.internals[0]!;
    expect(found.partnerId).toBe(bore.piece.id);
  });

  it('tells a bell mouth from a taper, at either end', () => {
    const of = (bore: number[]) => effect({ bores: [bore], fit: extreme })!.shapes;
    expect(of([40, 40, 10, 10, 10, 10])).toEqual([
      { kind: 'bell', amountPm: 30 * um, end: 'first' },
    ]);
    expect(of([10, 10, 10, 10, 40, 40])).toEqual([
      { kind: 'bell', amountPm: 30 * um, end: 'last' },
    ]);
    expect(of([40, 40, 25, 25, 10, 10])[0]).toMatchObject({ kind: 'taper' });
    expect(of([10, 10, 40, 40, 10, 10])).toMatchObject([{ kind: 'barrel', amountPm: 30 * um }]);
    expect(of([40, 40, 10, 10, 40, 40])).toMatchObject([{ kind: 'waist', amountPm: 30 * um }]);
  });

  it('has no bell mouth on a shaft, nor one from stations not read all across', () => {
    const shafts = [[40, 40, 10, 10, 10, 10]];
    const shaft = effect({ bores: [six(60)], shafts, fit: extreme }, 'external')!;
    expect(shaft.shapes.map(({ kind }) => kind)).not.toContain('bell');
    const half = effect({ bores: [[40, 40, 10, 10, 10]], fit: extreme })!;
    expect(half.shapes.map(({ kind }) => kind)).not.toContain('bell');
  });

  it('says where it is tightest as well when the mean governs', () => {
    const bores = [[0, 40, 0, 40, 0, 40]];
    const found = effect({ bores, shafts: [six(0)], fit: { ...extreme, governs: 'mean' } })!;
    expect(found.governs).toBeNull();
    expect(found.clearancePm).toBe(20 * um);
    expect(found.tightest).toEqual({ station: 'top', direction: 'A', clearancePm: 0 });
    expect(found.widest!.clearancePm).toBe(40 * um);
  });

  it('tells nothing that is within the doubt of the readings', () => {
    const found = effect({ bores: [[10, 10, 11, 10, 10, 10]], fit: extreme })!;
    expect(found).toMatchObject({ shapes: [], widest: null, tightest: null });
  });

  it('knows a piece read at too few places for a shape to show', () => {
    // The plan has three stations and two directions; places are filled station by station.
    const enough = (count: number) => {
      const view = smallJob({ bores: [Array.from({ length: count }, () => 10)] });
      const fit = view.fits[0]!;
      const cell = view.cell(fit.internals[0]!.piece.id, fit.internalFeature.id);
      return shapeEffect(fit, 'internal', fit.internals[0]!, cell, view.cells.gauges)!.isReadEnough;
    };
    expect([1, 2, 3, 6].map(enough)).toEqual([false, false, true, true]);
    // All along one side: whether it is oval is not known.
    const { sheet } = smallJob({ bores: [six(10)] });
    const view = jobView({
      ...sheet,
      readings: sheet.readings.filter(({ direction }) => direction === 'A'),
    });
    const fit = view.fits[0]!;
    const [piece] = fit.internals;
    const cell = view.cell(piece!.piece.id, fit.internalFeature.id);
    expect(cell.readings).toHaveLength(3);
    expect(shapeEffect(fit, 'internal', piece!, cell, view.cells.gauges)!.isReadEnough).toBe(false);
  });

  it('has nothing to say of a piece that is not measured', () => {
    expect(effect({})).toBeNull();
  });
});
