import { describe, expect, it } from 'vitest';
import { fitByRule } from '@/lib/maths/fit/fit-by-rule';

const um = 1_000_000;

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
