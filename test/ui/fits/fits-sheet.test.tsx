import type { ComponentType } from 'react';
import { describe, expect, it, vi } from 'vitest';
import { nextWords } from '@/app/ui/job/next-words';
import { jobView } from '@/lib/rules/job-view';
import { pairLook } from '@/lib/rules/pair-look';
import type { Piece } from '@/lib/schema/part';
import type { JobSheet } from '@/lib/schema/sheet';
import { smallJob } from '@/test/rules/small-job';
import { fitsPage } from './fits-page';

vi.mock('next/navigation', () => ({ useRouter: () => ({ push() {} }) }));
// What comes in scripts of its own is waited for here, as a browser would.
vi.mock('next/dynamic', async () => {
  const { lazy } = await import('react');
  return {
    default: (load: () => Promise<ComponentType>) => lazy(async () => ({ default: await load() })),
  };
});

const six = (microns: number) => Array.from({ length: 6 }, () => microns);
const at = '2026-03-14T11:00:00Z';

/** L1 is 18.010 and P1 18.000, made final; L2 is 18.011 and P2 18.001. */
function withFinalPair(over: Partial<Piece>): JobSheet {
  const view = smallJob({ bores: [six(10), six(11)], shafts: [six(0), six(1)] });
  const [fit] = view.fits;
  const pair = fit!.pairs[0]!;
  const look = pairLook(view, fit!, pair, { act: 'made final', at, personId: null });
  const { clearancePm, uncertaintyPm } = look;
  const { internalPieceId, externalPieceId } = pair;
  return {
    ...view.sheet,
    pieces: view.sheet.pieces.map((p) => (p.id === externalPieceId ? { ...p, ...over } : p)),
    pairs: [
      {
        id: 'pair', version: 1, createdAt: at, struckAt: null, jobId: view.sheet.job.id,
        fitId: fit!.fit.id, internalPieceId, externalPieceId, state: 'final', mark: '1', clearancePm,
        uncertaintyPm, decidedAt: at, personId: null, looks: [look],
      },
    ],
  }; // prettier-ignore
}

describe('the Fits sheet', () => {
  it('can strike its fit out, and names one that is out with what brings it back', async () => {
    const { sheet } = smallJob({ bores: [six(10)] });
    expect((await fitsPage(sheet)).text).toContain('Strike this fit out');
    const [fit] = sheet.fits;
    const struck = await fitsPage({ ...sheet, fits: [{ ...fit!, struckAt: at }] });
    expect(struck.text).toContain('Power piston in liner is struck out. Put back');
    expect(struck.text).toContain('No fits yet');
    const features = sheet.features.map((feature) =>
      feature.id === fit!.internalFeatureId ? { ...feature, struckAt: at } : feature,
    );
    const without = await fitsPage({ ...sheet, features, runs: [] });
    expect(without.text).toContain('Power piston in liner is not shown: bore is struck out.');
  });

  it('says of a target that it is outside what is drawn, and of one inside nothing', async () => {
    // 18.010 less the clearance of 0.010 aimed at is 18.000.
    const { sheet } = smallJob({ bores: [six(10)] });
    const page = (lowerPm: number, upperPm: number) =>
      fitsPage({
        ...sheet,
        features: sheet.features.map((feature) =>
          feature.kind === 'outside' ? { ...feature, lowerPm, upperPm } : feature,
        ),
      });
    const um = 1_000_000;
    expect((await page(-17 * um, -6 * um)).text).toContain(
      'Drawn 17.983 to 17.994: this target is outside it.',
    );
    expect((await page(-17 * um, 6 * um)).text).not.toContain('this target is outside it');
  });

  it('has a bore to make to a shaft in the table of clearances', async () => {
    const { text } = await fitsPage(
      smallJob({ bores: [six(10)], shafts: [six(0), six(-5)] }).sheet,
    );
    expect(text).toContain('L2 for P2: to make, to 18.005, aim 0.010 clear');
    expect(text).toContain('Make L2 to P2');
  });

  it('says on the card what governs, that no slide is known, and how it fits hot', async () => {
    const { text } = await fitsPage(smallJob({ bores: [six(10)], shafts: [[80]] }).sheet);
    expect(text).toContain('Governed by L1, the mean');
    expect(text).toContain('Left to turn, on diameter 0.080 On the dial no slide said yet');
    expect(text).toMatch(/Warm: both 80 °C about 0\.\d{3} clear/);
    expect(text).toMatch(/Starting: liner 20 °C, power piston 60 °C about 0\.\d{3} clear/);
    expect(text).toMatch(/Touches when power piston is hotter by about \d+ °C/);
    expect(text).toContain('Estimates, at temperatures that are only to begin with');
    // One reading of the piston tells no shape; six alike of the bore tell that there is none.
    expect(text).toContain('P1: read at too few places to tell a shape.');
    expect(text).toContain('L1: nothing larger than the doubt of the readings.');
  });

  it('says of a tight fit that it can burst and burn, and of another nothing of the kind', async () => {
    const job = (min: number, max: number) =>
      smallJob({
        bores: [six(10)],
        fit: { minPm: min * 1e6, maxPm: max * 1e6, aimPm: min * 1e6 + 5e6 },
      });
    const { text } = await fitsPage(job(-35, -15).sheet);
    expect(text).toContain('Wanted 0.015 to 0.035 tight, aim 0.030 tight.');
    expect(text).toContain('Tight fits store force: a hub can burst');
    expect((await fitsPage(job(0, 12).sheet)).text).not.toContain('Tight fits store force');
  });

  it('makes to the nearest size that proves the fit, and says that the aim itself could not', async () => {
    const { sheet } = smallJob({ bores: [six(10)], shafts: [[80]], fit: { aimPm: 8e6 } });
    const { text } = await fitsPage(sheet);
    expect(text).toContain('At the aim itself, 18.002, these gauges could not prove the fit');
    expect(text).toMatch(/18\. ?001 .*No larger than 18\.001 No smaller than 17\.999/);
    const middle = await fitsPage(smallJob({ bores: [six(10)], shafts: [[80]] }).sheet);
    expect(middle.text).not.toContain('At the aim itself');
  });

  it('says a target in the step of the finer of the two gauges', async () => {
    const { sheet } = smallJob({ bores: [six(10)], shafts: [[80]] });
    const [fine, other] = sheet.gauges;
    const coarse = { ...other!, resolutionPm: 10_000_000 };
    const gauges = sheet.gauges.map((gauge) => (gauge.id === coarse.id ? coarse : gauge));
    const bore = sheet.fits[0]!.internalFeatureId;
    const boreBy = (gaugeId: string, shaftBy: string) => ({
      ...sheet,
      gauges,
      readings: sheet.readings.map((reading) => ({
        ...reading,
        gaugeId: reading.featureId === bore ? gaugeId : shaftBy,
      })),
    });
    const view = (by: JobSheet) => nextWords(jobView(by), { unit: 'mm', decimal: '.' });
    expect(view(boreBy(coarse.id, fine!.id))).toBe('Make P1 to 18.000, for L1');
    expect(view(boreBy(fine!.id, coarse.id))).toBe('Make P1 to 18.000, for L1');
    expect(view(boreBy(coarse.id, coarse.id))).toBe('Make P1 to 18.00, for L1');
    const { text } = await fitsPage(boreBy(coarse.id, fine!.id));
    expect(text).toMatch(/Make P1 to L1 L1 is 18\.01 ± 0\.\d+ 18\. 000/);
  });

  it('says no clearance of a bore with metal left in it', async () => {
    // L1 is 0.009 under its own limit, and too tight for P1: it is bored to it.
    const { html } = await fitsPage(
      smallJob({ bores: [six(-9), six(20)], shafts: [six(0), six(10)] }).sheet,
    );
    expect(html).toContain('P2 in L1: L1 is still to cut');
  });

  it('asks for the first bore while nothing is measured', async () => {
    const { text } = await fitsPage(smallJob({}).sheet);
    expect(text).toContain('Measure L1 first: what its partner is made to follows from its size.');
    expect(text).not.toContain('Every piece of this fit has a size');
  });

  it.each<[string, Partial<Piece>, string]>([
    ['struck out', { struckAt: at }, 'P1 was struck out.'],
    ['scrapped', { fate: 'scrapped' }, 'P1 was scrapped.'],
    ['to be sleeved', { fate: 'sleeve' }, 'P1 is to be sleeved.'],
  ])('is drawn whole when a piece of a final pair is %s, and says so', async (_, over, words) => {
    const { text } = await fitsPage(withFinalPair(over));
    expect(text).toContain(words);
    expect(text).toContain('Looked at: let it stand');
    expect(text).toContain('Undo the pair P1 in L1');
    expect(text).toContain('P1 in L1, as measured');
    expect(text).toContain('Hot and cold');
    // P2 in L2 is only chosen.
    expect(text).toMatch(/Pairs 1 of \d final/);
  });
});
