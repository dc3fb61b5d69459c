import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { stripSpan, type SpanFacts } from '@/app/ui/strip/strip-span';

const mm = (value: number) => Math.round(value * 1e9);

const facts: SpanFacts = {
  unit: 'mm',
  resolutionPm: mm(0.001),
  lowerPm: mm(17.996),
  upperPm: mm(18),
};
const partner = (from: number, to: number) => ({
  mark: 'L5',
  name: 'bore',
  sizePm: mm((from + to) / 2),
  expandedPm: mm((to - from) / 2),
  lowerPm: null,
  upperPm: null,
});
const shareOf = (span: { fromPm: number; toPm: number }, bandPm: number) =>
  bandPm / (span.toPm - span.fromPm);

describe('stripSpan', () => {
  it('gives the band 65 % of the width where there is nothing else to show', () => {
    const span = stripSpan(facts);
    expect(shareOf(span, mm(0.004))).toBeCloseTo(0.65, 9);
    expect((span.fromPm + span.toPm) / 2).toBeCloseTo(mm(17.998), 3);
  });

  it('covers a partner within four band widths, and 8 % at each end', () => {
    // By hand: 17.996 to 18.009 is 0.013; 8 % of it is 0.00104.
    const span = stripSpan({ ...facts, partner: partner(18.007, 18.009) });
    expect(span.fromPm).toBeCloseTo(mm(17.99496), 0);
    expect(span.toPm).toBeCloseTo(mm(18.01004), 0);
  });

  it('leaves out a partner farther away than four band widths', () => {
    const far = { ...facts, partner: partner(18.0161, 18.0181) };
    expect(stripSpan(far)).toEqual(stripSpan(facts));
    expect(stripSpan({ ...facts, partner: partner(18.016, 18.018) })).not.toEqual(stripSpan(facts));
    const below = { ...facts, partner: partner(17.9779, 17.9799) };
    expect(stripSpan(below)).toEqual(stripSpan(facts));
  });

  it('covers the limits of a partner that is not measured yet', () => {
    const unmeasured = { ...partner(0, 0), sizePm: null, lowerPm: mm(18.002), upperPm: mm(18.008) };
    expect(stripSpan({ ...facts, partner: unmeasured }).toPm).toBeGreaterThan(mm(18.008));
  });

  it('covers the notch wherever it is', () => {
    expect(stripSpan({ ...facts, aimPm: mm(17.99) }).fromPm).toBeLessThan(mm(17.99));
  });

  it('covers readings known when the piece was opened, within two band widths', () => {
    const near = stripSpan(facts, { readingsPm: [mm(18.008)] });
    expect(near.toPm).toBeGreaterThan(mm(18.008));
    expect(stripSpan(facts, { readingsPm: [mm(18.0081)] })).toEqual(stripSpan(facts));
    expect(stripSpan(facts, { readingsPm: [mm(17.988)] }).fromPm).toBeLessThan(mm(17.988));
    expect(stripSpan(facts, { readingsPm: [mm(17.9879)] })).toEqual(stripSpan(facts));
  });

  it('gives the band at least 20 % of the width, taking from both sides in proportion', () => {
    const span = stripSpan(facts, { sizesPm: [mm(18.5)] });
    expect(shareOf(span, mm(0.004))).toBeCloseTo(0.2, 9);
    expect(span.fromPm).toBeLessThan(mm(17.996));
    expect(span.toPm).toBeLessThan(mm(18.016));
  });

  it('goes down to 4 % for a piece being cut, which shows its stock', () => {
    const cutting = { ...facts, live: true };
    const span = stripSpan(cutting, { sizesPm: [mm(18.08)] });
    expect(span.toPm).toBeGreaterThan(mm(18.08));
    const far = stripSpan(cutting, { sizesPm: [mm(19)] });
    expect(shareOf(far, mm(0.004))).toBeCloseTo(0.04, 9);
    const expected = { ...facts, expected: { valuePm: mm(18.05), expandedPm: mm(0.002) } };
    expect(stripSpan(expected).toPm).toBeGreaterThan(mm(18.052));
  });

  it('builds on one limit, as far again as the aim is inside it, or twenty steps of the gauge', () => {
    const oneLimit = { ...facts, lowerPm: null, upperPm: mm(0.02) };
    const span = stripSpan(oneLimit);
    expect(shareOf(span, mm(0.02))).toBeCloseTo(0.65, 9);
    expect(span.toPm).toBeGreaterThan(mm(0.02));
    const aimed = stripSpan({ ...oneLimit, aimPm: mm(0.017) });
    expect(shareOf(aimed, mm(0.006))).toBeCloseTo(0.65, 9);
    const lower = stripSpan({ ...facts, upperPm: null });
    expect(lower.fromPm).toBeLessThan(mm(17.996));
    expect(lower.toPm).toBeGreaterThan(mm(18.016));
  });

  it('builds about the first thing known where there are no limits at all', () => {
    const open: SpanFacts = { ...facts, lowerPm: null, upperPm: null };
    const about = (span: { fromPm: number; toPm: number }) => (span.fromPm + span.toPm) / 2;
    expect(about(stripSpan(open, { readingsPm: [mm(52.01), mm(52.012)] }))).toBeCloseTo(
      mm(52.01),
      0,
    );
    expect(about(stripSpan({ ...open, aimPm: mm(30) }))).toBeCloseTo(mm(30), 0);
    expect(about(stripSpan({ ...open, partner: partner(18.007, 18.009) }))).toBeCloseTo(
      mm(18.008),
      0,
    );
  });

  it('still has a width where both limits are one size, or stand the wrong way round', () => {
    for (const [lower, upper] of [
      [18, 18],
      [18.004, 18],
    ] as const) {
      const span = stripSpan({ ...facts, lowerPm: mm(lower), upperPm: mm(upper) });
      expect(span.fromPm).toBeLessThan(mm(18));
      expect(span.toPm).toBeGreaterThan(mm(lower));
    }
  });

  it('always holds the band and gives it 20 to 65 %, whatever else is known', () => {
    const size = fc.integer({ min: mm(17), max: mm(19) });
    fc.assert(
      fc.property(
        size,
        fc.integer({ min: 1000, max: mm(0.2) }),
        size,
        size,
        (lower, band, a, b) => {
          const limits = { ...facts, lowerPm: lower, upperPm: lower + band, aimPm: a };
          const span = stripSpan(limits, { sizesPm: [b], readingsPm: [a, b] });
          expect(span.fromPm).toBeLessThan(lower);
          expect(span.toPm).toBeGreaterThan(lower + band);
          expect(shareOf(span, band)).toBeGreaterThanOrEqual(0.2 - 1e-9);
          expect(shareOf(span, band)).toBeLessThanOrEqual(0.65 + 1e-9);
        },
      ),
    );
  });
});
