import { describe, expect, it } from 'vitest';
import { cutRatio, type Cut, type CutLog } from '@/lib/maths/fit/cut-ratio';

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

  it('works down to a cut of one picometre', () => {
    const one = cutRatio({ ...shaft, cuts: [{ kind: 'cut', dialPm: 1, sizeAfterPm: 1 }] });
    expect(one.cuts[0]).toMatchObject({ askedPm: 1 });
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

  it('spreads three ratios by two degrees of freedom', () => {
    // Ratios 0.90, 0.94 and 0.98: mean 0.94, sd 0.04; t(0.95, 2) = 2.919986 (any t table),
    // 0.94 + 2.919986 x 0.04 x sqrt(4/3) = 1.074868.
    const cuts = [cut(100, 24_910), cut(100, 24_816), cut(100, 24_718)];
    expect(cutRatio({ ...shaft, cuts }).learned).toMatchObject({
      mean: expect.closeTo(0.94, 12),
      sd: expect.closeTo(0.04, 12),
      upper: expect.closeTo(1.074868, 6),
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
