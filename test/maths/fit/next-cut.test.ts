import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cutRatio, type Cut, type CutLog } from '@/lib/maths/fit/cut-ratio';
import { dialSetting } from '@/lib/maths/fit/dial-setting';
import { fitByRule } from '@/lib/maths/fit/fit-by-rule';
import { nextCut } from '@/lib/maths/fit/next-cut';

const um = 1_000_000;
const cut = (dialUm: number, sizeUm: number): Cut => ({
  kind: 'cut',
  dialPm: dialUm * um,
  sizeAfterPm: sizeUm * um,
});
const shaft: CutLog = {
  side: 'external',
  startPm: 25_000 * um,
  dial: { reads: 'diameter', divisionPm: 10 * um },
  cuts: [],
};

describe('dialSetting', () => {
  it('turns 0.18 on diameter into 0.09 on a radius dial', () => {
    expect(dialSetting(180 * um, { reads: 'radius', divisionPm: 10 * um })).toEqual({
      divisions: 9,
      dialPm: 90 * um,
      takesOffPm: 180 * um,
      leavesOnPm: 0,
      exactDialPm: 90 * um,
    });
  });

  it('rounds to the side that leaves metal on', () => {
    const set = dialSetting(61_900_000, { reads: 'diameter', divisionPm: 20 * um });
    expect([set.divisions, set.dialPm, set.leavesOnPm]).toEqual([3, 60 * um, 1_900_000]);
  });

  it('multiplies the dial by a fine feed', () => {
    // A top slide at 5.74 degrees moves ten for one of infeed: 0.02 on diameter is 0.1 on its dial.
    const fine = { reads: 'radius', divisionPm: 20 * um, fineFeedRatio: 10 } as const;
    expect(dialSetting(20 * um, fine)).toMatchObject({ divisions: 5, takesOffPm: 20 * um });
    expect(dialSetting(19 * um, fine)).toMatchObject({ divisions: 4, takesOffPm: 16 * um });
  });

  it('works down to divisions and cuts of one picometre', () => {
    expect(dialSetting(3, { reads: 'diameter', divisionPm: 1 }).divisions).toBe(3);
    const one = cutRatio({ ...shaft, cuts: [{ kind: 'cut', dialPm: 1, sizeAfterPm: 1 }] });
    expect(one.cuts[0]).toMatchObject({ askedPm: 1 });
  });

  it('turns nothing when nothing is left', () => {
    const dial = { reads: 'diameter', divisionPm: 10 * um } as const;
    expect(dialSetting(0, dial).divisions).toBe(0);
    expect(dialSetting(-5 * um, dial)).toMatchObject({ divisions: 0, leavesOnPm: -5 * um });
  });

  it('never takes off more than is left, and never leaves a whole division on', () => {
    const dials = fc.record({
      reads: fc.constantFrom('radius' as const, 'diameter' as const),
      divisionPm: fc.integer({ min: 1, max: 50 * um }),
      fineFeedRatio: fc.constantFrom(1, 2, 10, 20),
    });
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 2_000 * um }), dials, (leftPm, dial) => {
        const set = dialSetting(leftPm, dial);
        const step = (dial.divisionPm * (dial.reads === 'radius' ? 2 : 1)) / dial.fineFeedRatio;
        // takesOffPm is rounded to a picometre where the fine feed does not divide.
        expect(set.divisions * step).toBeLessThanOrEqual(leftPm);
        expect((set.divisions + 1) * step).toBeGreaterThan(leftPm);
        expect(Math.abs(set.takesOffPm - set.divisions * step)).toBeLessThanOrEqual(0.5);
        expect(set.takesOffPm + set.leavesOnPm).toBe(leftPm);
      }),
    );
  });

  it('gives every whole number of divisions back, which doubles of millimetres do not', () => {
    for (let n = 1; n <= 200; n += 1) {
      const dial = { reads: 'diameter', divisionPm: 10 * um } as const;
      expect(dialSetting(n * 10 * um, dial).divisions).toBe(n);
    }
  });

  it.each([
    ['dial-setting/picometres', 0.5, {}],
    ['dial-setting/dial', 1, { divisionPm: 0 }],
    ['dial-setting/dial', 1, { divisionPm: 1.5 }],
    ['dial-setting/dial', 1, { fineFeedRatio: 0 }],
    ['dial-setting/dial', 1, { fineFeedRatio: NaN }],
  ])('refuses by %s', (code, leftPm, part) => {
    const dial = { reads: 'diameter', divisionPm: 10, ...part } as const;
    expect(() => dialSetting(leftPm, dial)).toThrow(expect.objectContaining({ code }));
  });
});

describe('cutRatio', () => {
  it('says what each cut took against what was asked', () => {
    // By hand: 25.000 to 24.724 with 0.300 on a diameter dial is 0.276, a ratio of 0.92.
    const { cuts, sizeNowPm, learned } = cutRatio({ ...shaft, cuts: [cut(300, 24_724)] });
    expect(cuts).toEqual([{ kind: 'cut', askedPm: 300 * um, gotPm: 276 * um, ratio: 0.92 }]);
    expect(sizeNowPm).toBe(24_724 * um);
    expect(learned).toEqual({ kind: 'mean', mean: 0.92, used: 1 });
  });

  it('asks twice the dial on a radius dial and a part of it with a fine feed', () => {
    const asked = (dial: Partial<CutLog['dial']>) =>
      cutRatio({ ...shaft, dial: { ...shaft.dial, ...dial }, cuts: [cut(100, 24_900)] }).cuts[0];
    expect(asked({ reads: 'radius' })).toMatchObject({ askedPm: 200 * um, ratio: 0.5 });
    expect(asked({ fineFeedRatio: 10 })).toMatchObject({ askedPm: 10 * um, ratio: 10 });
  });

  it('counts a bore by what it grew', () => {
    const bore: CutLog = { ...shaft, side: 'internal', cuts: [cut(100, 25_090)] };
    expect(cutRatio(bore).cuts[0]).toMatchObject({ gotPm: 90 * um, ratio: 0.9 });
  });

  it('lets a spring pass move the size without teaching anything', () => {
    const cuts: Cut[] = [
      cut(100, 24_910),
      { kind: 'spring', sizeAfterPm: 24_900 * um },
      cut(100, 24_810),
    ];
    const { cuts: found, learned } = cutRatio({ ...shaft, cuts });
    expect(found[1]).toEqual({ kind: 'spring', gotPm: 10 * um });
    expect(learned).toMatchObject({ mean: 0.9, used: 2, sd: 0, upper: 0.9 });
  });

  it('gives the 95 % limit of the next ratio by the t distribution', () => {
    // Ratios 1.04 and 1.025: mean 1.0325, sd 0.0106066; t(0.95, 1) = 6.313752 (any t table),
    // 1.0325 + 6.313752 x 0.0106066 x sqrt(1.5) = 1.114518.
    const { learned } = cutRatio({ ...shaft, cuts: [cut(50, 24_948), cut(40, 24_907)] });
    expect(learned).toMatchObject({
      kind: 'spread',
      mean: expect.closeTo(1.0325, 12),
      sd: expect.closeTo(0.0106066, 7),
      upper: expect.closeTo(1.114518, 6),
    });
  });

  it('forgets all but the last five', () => {
    const first = cut(1000, 24_500);
    const rest = [1, 2, 3, 4, 5].map((k) => cut(100, 24_500 - 90 * k));
    const { learned } = cutRatio({ ...shaft, cuts: [first, ...rest] });
    expect(learned).toMatchObject({ used: 5, mean: expect.closeTo(0.9, 12) });
  });

  it.each([
    ['cut-ratio/size', { startPm: 0 }],
    ['cut-ratio/size', { cuts: [cut(100, -1)] }],
    ['cut-ratio/dial', { cuts: [cut(0, 24_900)] }],
    ['cut-ratio/dial', { cuts: [cut(-1, 24_900)] }],
    ['cut-ratio/picometres', { cuts: [cut(0.1234567, 24_900)] }],
    ['dial-setting/dial', { dial: { reads: 'radius' as const, divisionPm: -1 } }],
  ])('refuses by %s', (code, part) => {
    expect(() => cutRatio({ ...shaft, ...part })).toThrow(expect.objectContaining({ code }));
  });
});

describe('nextCut', () => {
  it('says when the piece is at or past its target', () => {
    const log = { ...shaft, cuts: [cut(100, 24_900)] };
    expect(nextCut(log, 24_900 * um)).toMatchObject({ kind: 'past-target', leftPm: 0 });
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

  it('refuses a target that is no size', () => {
    expect(() => nextCut(shaft, 0)).toThrow(expect.objectContaining({ code: 'next-cut/size' }));
  });
});

describe('fitByRule', () => {
  it('gives a thousandth an inch as a micrometre a millimetre', () => {
    const rule = { ratesUmPerMm: { min: 0.5, aim: 1, max: 1.5 } };
    expect(fitByRule(25_400_000_000, rule)).toEqual({
      minPm: 12_700_000,
      aimPm: 25_400_000,
      maxPm: 38_100_000,
    });
  });

  it('lets the aim stand on a limit', () => {
    const onLeast = { ratesUmPerMm: { min: 1, aim: 1, max: 2 } };
    expect(fitByRule(1000, onLeast)).toEqual({ minPm: 1, aimPm: 1, maxPm: 2 });
    const onMost = { ratesUmPerMm: { min: 1, aim: 2, max: 2 } };
    expect(fitByRule(1000, onMost)).toEqual({ minPm: 1, aimPm: 2, maxPm: 2 });
  });

  it('adds a fixed amount and knows interference', () => {
    const rule = { ratesUmPerMm: { min: -2, aim: -1, max: 0 }, fixedPm: 3 * um };
    expect(fitByRule(10_000 * um, rule)).toEqual({
      minPm: -17 * um,
      aimPm: -7 * um,
      maxPm: 3 * um,
    });
  });

  it.each([
    ['fit-by-rule/size', 0, { min: 0, aim: 1, max: 2 }],
    ['fit-by-rule/rule', 1, { min: 1, aim: 0, max: 2 }],
    ['fit-by-rule/rule', 1, { min: 1, aim: 1, max: 1 }],
    ['fit-by-rule/rule', 1, { min: 0, aim: 3, max: 2 }],
    ['fit-by-rule/rule', 1, { min: NaN, aim: 1, max: 2 }],
  ])('refuses by %s', (code, diameterPm, ratesUmPerMm) => {
    expect(() => fitByRule(diameterPm, { ratesUmPerMm })).toThrow(
      expect.objectContaining({ code }),
    );
  });
});
