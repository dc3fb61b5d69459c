import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dialSetting } from '@/lib/maths/fit/dial-setting';

const um = 1_000_000;

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

  it('works down to divisions of one picometre', () => {
    expect(dialSetting(3, { reads: 'diameter', divisionPm: 1 }).divisions).toBe(3);
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
        // Times the fine-feed ratio everything is a whole number below 2^53, so nothing is rounded here.
        const ratio = dial.fineFeedRatio;
        const step = dial.divisionPm * (dial.reads === 'radius' ? 2 : 1);
        expect(set.divisions * step).toBeLessThanOrEqual(leftPm * ratio);
        expect((set.divisions + 1) * step).toBeGreaterThan(leftPm * ratio);
        // takesOffPm is rounded to a picometre where the fine feed does not divide.
        const roundedAway = Math.abs(set.takesOffPm * ratio - set.divisions * step);
        expect(roundedAway).toBeLessThanOrEqual(ratio / 2);
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
