import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Cut, type CutLog } from '@/lib/maths/fit/cut-ratio';
import { nextCut } from '@/lib/maths/fit/next-cut';

const um = 1_000_000;
const cut = (dialUm: number, sizeUm: number): Cut => ({
  kind: 'cut',
  dialPm: dialUm * um,
  sizeAfterPm: Math.round(sizeUm * um),
});
const shaft: CutLog = {
  side: 'external',
  startPm: 25_000 * um,
  dial: { reads: 'diameter', divisionPm: 10 * um },
  cuts: [],
};

describe('nextCut', () => {
  it('says when the piece is at or past its target', () => {
    const log = { ...shaft, cuts: [cut(100, 24_900)] };
    expect(nextCut(log, 24_900 * um)).toMatchObject({ kind: 'past-target', leftPm: 0 });
    expect(nextCut(log, 24_900 * um - 1)).toMatchObject({ kind: 'cut', leftPm: 1, divisions: 0 });
    expect(nextCut(log, 24_901 * um)).toMatchObject({ kind: 'past-target', leftPm: -um });
    const bore: CutLog = { ...log, side: 'internal', cuts: [cut(100, 25_100)] };
    expect(nextCut(bore, 25_099 * um)).toMatchObject({ kind: 'past-target', leftPm: -um });
    expect(nextCut(bore, 25_101 * um)).toMatchObject({ kind: 'cut', leftPm: um });
    const more = nextCut(bore, 25_120 * um);
    expect(more).toMatchObject({ divisions: 2, expectedSizePm: 25_120 * um });
  });

  it('has nothing to go by before the first cut, or when cuts took nothing', () => {
    expect(nextCut(shaft, 24_900 * um)).toMatchObject({ kind: 'no-cut-yet', leftPm: 100 * um });
    const spring: Cut = { kind: 'spring', sizeAfterPm: 24_999 * um };
    expect(nextCut({ ...shaft, cuts: [spring] }, 24_900 * um).kind).toBe('no-cut-yet');
    expect(nextCut({ ...shaft, cuts: [cut(100, 25_000)] }, 24_900 * um).kind).toBe('no-ratio');
    expect(nextCut({ ...shaft, cuts: [cut(100, 25_001)] }, 24_900 * um).kind).toBe('no-ratio');
  });

  it('asks for exactly sixteen divisions where sixteen are wanted', () => {
    // Three ratios 0.9, 0.8, 0.7 have the mean 0.8 that doubles miss; 0.128 left wants 0.160.
    const cuts = [cut(100, 24_910), cut(100, 24_830), cut(100, 24_760)];
    const next = nextCut({ ...shaft, cuts }, (24_760 - 128) * um);
    expect(next).toMatchObject({ kind: 'cut', divisions: 16, dialPm: 160 * um });
    expect(nextCut({ ...shaft, cuts }, (24_760 - 128) * um + 1)).toMatchObject({ divisions: 15 });
  });

  it('leaves the cautious dial out after a single cut', () => {
    const next = nextCut({ ...shaft, cuts: [cut(100, 24_910)] }, 24_800 * um);
    expect(next).toMatchObject({ kind: 'cut', divisions: 12, expectedSizePm: 24_802 * um });
    expect('cautiousDialPm' in next).toBe(false);
  });

  it('is no more cautious than the ratio where every cut took the same', () => {
    // Three times 0.95, whose sum in doubles is not three times 0.95; 0.114 left is 0.120 on the dial.
    const cuts = [cut(100, 24_905), cut(100, 24_810), cut(100, 24_715)];
    const next = nextCut({ ...shaft, cuts }, (24_715 - 114) * um);
    expect(next).toMatchObject({ dialPm: 120 * um, cautiousDialPm: 120 * um });
    expect(next.ratio.learned).toMatchObject({ mean: 0.95, sd: 0, upper: 0.95 });
  });

  it('is cautious by the upper ratio', () => {
    // Ratios 1.04 and 1.025 give the upper 1.114518; 0.061 left: 0.061 / 1.0325 = 0.0591 and
    // 0.061 / 1.114518 = 0.0547 by hand, in divisions of 0.002 29 and 27.
    const fine: CutLog = { ...shaft, dial: { reads: 'diameter', divisionPm: 2 * um } };
    const next = nextCut({ ...fine, cuts: [cut(50, 24_948), cut(40, 24_907)] }, 24_846 * um);
    expect(next).toMatchObject({ dialPm: 58 * um, cautiousDialPm: 54 * um });
    const halved: CutLog = { ...fine, dial: { reads: 'radius', divisionPm: um } };
    const onRadius = nextCut({ ...halved, cuts: [cut(25, 24_948), cut(20, 24_907)] }, 24_846 * um);
    expect(onRadius).toMatchObject({ dialPm: 29 * um, cautiousDialPm: 27 * um });
  });

  it('asks for no division when less than one is left', () => {
    const next = nextCut({ ...shaft, cuts: [cut(100, 24_900)] }, 24_891 * um);
    expect(next).toMatchObject({ kind: 'cut', divisions: 0, expectedSizePm: 24_900 * um });
  });

  it('stays on the metal side of the target by its own mean, whatever the log', () => {
    const logs = fc.record({
      side: fc.constantFrom('external' as const, 'internal' as const),
      reads: fc.constantFrom('radius' as const, 'diameter' as const),
      fineFeedRatio: fc.constantFrom(1, 4),
      divisionUm: fc.constantFrom(2, 5, 10, 25),
      ratios: fc.array(fc.integer({ min: 60, max: 130 }), { minLength: 1, maxLength: 7 }),
      leftUm: fc.integer({ min: 1, max: 900 }),
    });
    fc.assert(
      fc.property(logs, ({ side, reads, fineFeedRatio, divisionUm, ratios, leftUm }) => {
        const way = side === 'external' ? -1 : 1;
        const perDial = (reads === 'radius' ? 2 : 1) / fineFeedRatio;
        let size = 25_000 * um;
        const cuts = ratios.map((ratio, i): Cut => {
          const dialPm = 100 * um + i * um;
          size += way * Math.round((dialPm * perDial * ratio) / 100);
          return { kind: 'cut', dialPm, sizeAfterPm: size };
        });
        const dial = { reads, fineFeedRatio, divisionPm: divisionUm * um };
        const log: CutLog = { side, startPm: 25_000 * um, dial, cuts };
        const target = size + way * leftUm * um;
        const next = nextCut(log, target);
        if (next.kind !== 'cut') throw new Error(`no cut but ${next.kind}`);
        // One picometre: the expected size is rounded to a whole one.
        expect((target - next.expectedSizePm) * way).toBeGreaterThanOrEqual(-1);
        expect(next.dialPm).toBeLessThanOrEqual(next.askOnDialPm + 1e-3);
        expect(next.dialPm + dial.divisionPm).toBeGreaterThan(next.askOnDialPm - 1e-3);
        expect(next.askOnDialPm * perDial).toBeCloseTo(next.askOnDiameterPm, 3);
        expect(next.cautiousDialPm ?? 0).toBeLessThanOrEqual(next.dialPm);
      }),
    );
  });

  it('is as bold as the ratio whenever every cut took the same share', () => {
    const share = fc.integer({ min: 1, max: 1999 });
    fc.assert(
      fc.property(share, fc.integer({ min: 2, max: 6 }), share, (thousandths, count, leftUm) => {
        const cuts = Array.from({ length: count }, (_, i) =>
          cut(100, 25_000 - ((i + 1) * thousandths) / 10),
        );
        const sizePm = cuts.at(-1)!.sizeAfterPm;
        const next = nextCut({ ...shaft, cuts }, sizePm - leftUm * um);
        expect(next.ratio.learned).toMatchObject({ sd: 0, mean: thousandths / 1000 });
        expect(next).toMatchObject({ kind: 'cut' });
        if (next.kind === 'cut') expect(next.cautiousDialPm).toBe(next.dialPm);
      }),
    );
  });

  it('refuses a target that is no size', () => {
    expect(() => nextCut(shaft, 0)).toThrow(expect.objectContaining({ code: 'next-cut/size' }));
  });
});
