import { describe, expect, it } from 'vitest';
import { targetHeat } from '@/lib/rules/heat/target-heat';
import { jobView } from '@/lib/rules/job-view';
import { smallJob } from '../small-job';

const um = 1_000_000;
const six = (microns: number) => Array.from({ length: 6 }, () => microns);
const own = (name: string, nano: number) => ({
  id: name, version: 1, createdAt: '2026-03-14T11:00:00Z', struckAt: null, name, note: '',
  expansionNanoPerC: nano, lowNanoPerC: nano, highNanoPerC: nano, over: '', source: '',
}); // prettier-ignore

/** L1 is 18.010, P1 is made to 18.000; a liner of 10 and a piston of 20 millionths a degree. */
function heatOf(fit: object = {}, piston = 'quick') {
  const { sheet } = smallJob({ bores: [six(10)], fit });
  const [internal, external] = [sheet.fits[0]!.internalFeatureId, sheet.fits[0]!.externalFeatureId];
  const partOf = (id: string) => sheet.features.find((feature) => feature.id === id)!.partId;
  const materials = [
    own('slow', 10_000),
    own('quick', 20_000),
  ] as unknown as typeof sheet.materials;
  const parts = sheet.parts.map((part) => ({
    ...part,
    material: part.id === partOf(internal) ? 'slow' : part.id === partOf(external) ? piston : '',
  }));
  const view = jobView({ ...sheet, parts, materials });
  return targetHeat(view.sheet, view.fits[0]!, view.fits[0]!.toMake[0]!);
}

describe('targetHeat', () => {
  // By hand: 18 mm x 10e-6 x 60 K = 0.0108 less at 80 °C; 18 x 20e-6 x 40 K = 0.0144 at the start; 0.010/(18 x 20e-6) = 27.8 K.
  it('expands both sides from 20 degrees, each by its own coefficient', () => {
    const heat = heatOf()!;
    expect(heat.isGuess).toBe(true);
    expect(heat.warm.temperatureC).toBe(80);
    expect(heat.warm.clearancePm / um).toBeCloseTo(10 - 10.8, 1);
    expect(heat.starting.clearancePm / um).toBeCloseTo(10 - 14.4, 1);
    // They touch before: no degrees are foretold.
    expect(heat.touchesHotterByC).toBeNull();
  });

  it('takes the temperatures of the fit, and says how much hotter it may be', () => {
    const heat = heatOf({
      soakedLowMilliC: 0, soakedHighMilliC: 40_000, badInternalMilliC: 20_000, badExternalMilliC: 30_000,
    })!; // prettier-ignore
    expect(heat).toMatchObject({ isGuess: false, starting: { outerC: 20, innerC: 30 } });
    expect(heat.warm.clearancePm / um).toBeCloseTo(10 - 3.6, 1);
    expect(heat.touchesHotterByC).toBeCloseTo(27.8, 1);
  });

  it('is nothing while a material is not known', () => {
    expect(heatOf({}, 'unobtainium')).toBeNull();
    expect(heatOf({}, '')).toBeNull();
  });
});
