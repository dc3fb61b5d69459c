import { describe, expect, it } from 'vitest';
import { cutView } from '@/lib/rules/cuts/cut-view';
import { gaugeForTarget } from '@/lib/rules/gauge-for-target';
import { smallJob } from './small-job';

const six = (microns: number) => Array.from({ length: 6 }, () => microns);

describe('gaugeForTarget', () => {
  it('gives the card and the Cut screen one ratio: that of the size that governs', () => {
    // A piston 0.050 too large and tapered by 0.012: its mean and its largest place are not known alike.
    const view = smallJob({
      bores: [six(10)],
      shafts: [[50, 50, 56, 56, 62, 62]],
      fit: { governs: 'extreme' },
    });
    const fit = view.fits[0]!;
    const target = fit.toMake[0]!;
    const own = fit.every.get(target.pieceId)!.size;
    const card = gaugeForTarget(
      { own, partner: target.partnerSize },
      target.limits,
      view.cells.gauges,
    );
    const said = { slide: null, lapPm: 0, changed: null, temperatureMilliC: null };
    const at = { pieceId: target.pieceId, featureId: fit.externalFeature.id };
    expect(cutView(view, at, said)!.gauge).toEqual(card);
    const mean = view.cell(at.pieceId, at.featureId).size!;
    expect(Math.abs(own!.expandedPm - mean.expandedPm)).toBeGreaterThan(1_000_000);
    const band = target.limits.upperPm - target.limits.lowerPm;
    expect(card!.ratio).toBeCloseTo(band / own!.expandedPm, 6);
  });

  it('judges by the partner while the piece is not measured, and not at all where nothing is', () => {
    const view = smallJob({ bores: [six(10)] });
    const target = view.fits[0]!.toMake[0]!;
    const { gauges } = view.cells;
    const by = { own: null, partner: target.partnerSize };
    expect(gaugeForTarget(by, target.limits, gauges)!.gaugeId).toBe(target.partnerSize.gaugeId);
    expect(gaugeForTarget({ own: null, partner: null }, target.limits, gauges)).toBeNull();
  });
});
