import { describe, expect, it } from 'vitest';
import { runCapability, type RunCapabilityInput } from '@/lib/maths/control/run-capability';
import { expectNear } from './near';

// Constructed: thirty-two sizes off the nominal, up and down in a fixed pattern without a lean.
const pattern = [1, -2, 0, 2, -1, 1, -1, 0];
const steady: RunCapabilityInput = {
  sizesMm: [...pattern, ...pattern.map((x) => -x), ...pattern.map((x) => -x), ...pattern].map(
    (um) => um / 1000,
  ),
  lowerMm: -0.006,
  upperMm: 0.006,
  resolutionMm: 0.001,
  confidence: 0.95,
};

describe('runCapability', () => {
  it('has no doubt about a steady run of enough pieces with a fine gauge', () => {
    const found = runCapability(steady);
    expect([found.pieces, found.doubts]).toEqual([32, []]);
  });

  it('works Pp from all pieces and Cp from the moving ranges', () => {
    // By hand: sum of squares 4 * 12, mean 0: s = sqrt(48 / 31) um; Pp = 12 / (6 s).
    const { overall, shortTerm } = runCapability(steady);
    const sigma = Math.sqrt(48 / 31);
    expectNear(overall?.sigmaMm, sigma / 1000, 1e-15);
    expectNear(overall?.indices.cp, 2 / sigma, 1e-12);
    expectNear(overall?.indices.cpk, 2 / sigma, 1e-12);
    // Ranges of a pattern 3 2 2 3 2 2 1 = 15; joins 0->-1 1, 0->-1 1, 0->1 1: (60 + 3) / 31 in um.
    const short = 63 / 31 / (2 / Math.sqrt(Math.PI));
    expectNear(shortTerm?.sigmaMm, short / 1000, 1e-15);
    expectNear(shortTerm?.indices.cp, 2 / short, 1e-12);
  });

  it('gives both confidence limits beside the indices', () => {
    // chi2(31): 17.539 and 48.232, as any chi-square table prints them.
    const { overall } = runCapability(steady);
    const pp = overall!.indices.cp!;
    expectNear(overall?.cpInterval?.low, pp * Math.sqrt(17.539 / 31), 1e-4);
    expectNear(overall?.cpInterval?.high, pp * Math.sqrt(48.232 / 31), 1e-4);
    expectNear(
      overall!.cpkInterval.high - overall!.cpkInterval.low,
      2 * 1.959964 * Math.sqrt(1 / (9 * 32) + pp ** 2 / 62),
      1e-6,
    );
  });

  it('doubts fewer than thirty pieces', () => {
    expect(runCapability(first(29)).doubts).toContain('too few');
    expect(runCapability(first(30)).doubts).not.toContain('too few');
  });

  it('doubts a run that drifts', () => {
    const drifting = steady.sizesMm.map((size, i) => size + i * 0.0002);
    expect(runCapability({ ...steady, sizesMm: drifting }).doubts).toContain('drifting');
  });

  it('looks for a drift between events, not across them', () => {
    // Two level stretches, the second 4 um higher: a step at the event, no drift.
    const stepped = steady.sizesMm.map((size, i) => size + (i < 16 ? 0 : 0.004));
    expect(runCapability({ ...steady, sizesMm: stepped }).doubts).toContain('drifting');
    const told = runCapability({ ...steady, sizesMm: stepped, eventsBefore: [16] });
    expect(told.doubts).not.toContain('drifting');
  });

  it('sees a drift in any one stretch', () => {
    const sizesMm = steady.sizesMm.map((size, i) => size + (i < 16 ? i * 0.0005 : 0));
    const found = runCapability({ ...steady, sizesMm, eventsBefore: [16] });
    expect(found.doubts).toContain('drifting');
  });

  it('doubts a run with a piece beyond the limits of its chart', () => {
    for (const wild of [0.02, -0.02]) {
      const sizesMm = steady.sizesMm.with(12, wild);
      expect(runCapability({ ...steady, sizesMm }).doubts).toContain('not steady');
    }
  });

  it('doubts a gauge that shows steps of more than a tenth of the tolerance', () => {
    expect(runCapability({ ...steady, resolutionMm: 0.0012 }).doubts).toEqual([]);
    expect(runCapability({ ...steady, resolutionMm: 0.0013 }).doubts).toEqual(['gauge too coarse']);
  });

  it('gives no index for sizes that are all the same, and says the gauge is too coarse', () => {
    const found = runCapability({ ...steady, sizesMm: Array.from({ length: 40 }, () => 0.0013) });
    expect(found).toEqual({ pieces: 40, doubts: ['gauge too coarse'] });
  });

  it('judges one limit on its own', () => {
    const { upperMm: _, ...lowerOnly } = steady;
    const { overall } = runCapability(lowerOnly);
    expect(overall?.indices.cp).toBeUndefined();
    expect(overall?.cpInterval).toBeUndefined();
    expect(overall?.indices.cpk).toBeGreaterThan(1);
  });

  it('passes the target on', () => {
    const { overall } = runCapability({ ...steady, targetMm: 0 });
    expectNear(overall?.indices.cpm, overall!.indices.cp!, 1e-12);
  });

  it.each<[string, Partial<RunCapabilityInput>, string]>([
    ['one size', { sizesMm: [1] }, 'at least 2 sizes, got 1'],
    ['NaN', { sizesMm: [1, NaN] }, 'finite sizes, got NaN at index 1'],
    ['a resolution of 0', { resolutionMm: 0 }, 'resolution above zero, got 0'],
    ['a confidence of 95', { confidence: 95 }, 'a confidence between 0 and 1, got 95'],
    ['an event past the end', { eventsBefore: [32] }, 'events at whole indices from 0 to 31'],
  ])('refuses %s', (_, broken, message) => {
    expect(() => runCapability({ ...steady, ...broken })).toThrow(message);
  });
});

function first(count: number): RunCapabilityInput {
  return { ...steady, sizesMm: steady.sizesMm.slice(0, count) };
}
